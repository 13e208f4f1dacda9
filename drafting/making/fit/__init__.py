"""The fit chart: ease by level and place on this wearer, what movement asks, what a performer checks off."""
