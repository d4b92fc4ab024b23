"""What a person has and does, as files: knots, materials, rules, shop and rack in; values out."""
