"""Curves of the trade that several blocks share: necklines, armholes, waists, darts, caps.

Between layers 2 and 3: knows the body's shapes, but no block and no file.
"""
