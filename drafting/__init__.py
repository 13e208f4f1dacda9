"""From tape to costume: draft, check and print fitted pieces true to scale.

    Body + Fabric -> Draft -> Pattern -> Findings -> Sheet -> file

`drafting.costume.make.make` runs the whole flow and is the page to read first.
"""
