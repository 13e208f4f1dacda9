"""What an order of work must not do, each rule by the state in which the work has to be.

    steps -> soundness (every part, seam and notion once) -> too_early (the rules, in a row) -> what is wrong

`tried`, `flat`, `small`, `rounds_closed`, `inside`, `cloth`, `bearers` and `lacking` hold the
rules, `asking` what they ask.
"""

from drafting.making.rules.soundness import unsound

__all__ = ["unsound"]
