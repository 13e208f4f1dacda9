"""The findings in words under the picture, worst first."""

from __future__ import annotations

import html
from collections.abc import Sequence

from drafting.checks.table import summary
from drafting.checks.words import capital, plain
from drafting.ground.findings import Finding, worst_first


def findings_html(findings: Sequence[Finding]) -> str:
    """Return how many checks hold, then every finding that is more than that.

    >>> findings_html([Finding("cap ease", "warning", "sleeve", 15, 30, "15 mm, not 30 <mm>")])[-84:]
    '<li class="warning"><b>Warning</b>, sleeve: 15 mm, not 30 &lt;mm&gt;</li></ul></div>'
    """
    said = [finding for finding in worst_first(list(findings)) if finding.level != "ok"]
    rows = "".join(_row(finding) for finding in said)
    return f'<div class="findings" aria-live="polite"><p>{html.escape(summary(findings))}</p><ul>{rows}</ul></div>'


def _row(finding: Finding) -> str:
    where = f", {html.escape(plain(finding.where))}" if finding.where else ""
    words = html.escape(finding.message)
    return f'<li class="{finding.level}"><b>{capital(finding.level)}</b>{where}: {words}</li>'
