"""Cape: half, three quarters or all of a circle over both arms, with a stand, a hood or a faced neck."""

PARTS = {"cape-body": {"neck_ease": 15.0}, "cape-neck": {}, "stiff-hem": {}, "hung-lining": {}}
