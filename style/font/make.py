"""Makes papers.ttf from Lato Regular: python3 make.py Lato-Regular.ttf papers.ttf (needs fonttools)."""

import sys

from fontTools import subset
from fontTools.ttLib import TTFont

NAME = "Snugfold Papers"

# Latin with both extensions, marks to combine, Greek, Cyrillic, Vietnamese and Welsh, old Greek; then signs.
LETTERS = [(0x20, 0x7E), (0xA0, 0x24F), (0x259, 0x259), (0x2B9, 0x2DD), (0x300, 0x36F), (0x370, 0x52F),
           (0x1E00, 0x1EFF), (0x1F00, 0x1FFF)]
SIGNS = [(0x2000, 0x206F), (0x2070, 0x209C), (0x20A0, 0x20BF), (0x2100, 0x2127), (0x2150, 0x215F), (0x2190, 0x2199),
         (0x2200, 0x22FF), (0x25A0, 0x25FF)]
# Shown by the glyph of another sign: spaces and a hyphen at which no line breaks.
SAME = {0x202F: 0x2009, 0x2011: 0x2010}


def main(source, target):
    font = TTFont(source)
    for table in font["cmap"].tables:
        for sign, other in SAME.items():
            if table.isUnicode() and other in table.cmap:
                table.cmap.setdefault(sign, table.cmap[other])
    options = subset.Options()
    # No hints, ligatures or kerning: pages are set by advance widths alone, and a browser that has this file draws
    # the same.
    options.hinting = False
    options.layout_features = []
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "kern", "DSIG", "FFTM"]
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
    options.notdef_outline = True
    options.recalc_bounds = True
    cut = subset.Subsetter(options)
    cut.populate(unicodes=[c for first, last in LETTERS + SIGNS for c in range(first, last + 1)])
    cut.subset(font)
    # "Lato" is a reserved name: what is made from it must be called something else (OFL 1.1, condition 3).
    plain = NAME.replace(" ", "")
    names = {1: NAME, 3: f"{plain}-Regular, from Lato 2.007", 4: f"{NAME} Regular", 6: f"{plain}-Regular"}
    for record in font["name"].names:
        if record.nameID in names:
            record.string = names[record.nameID]
    # The same bytes whenever it is made.
    font["head"].modified = font["head"].created
    font.recalcTimestamp = False
    font.save(target)


if __name__ == "__main__":
    main(*sys.argv[1:])
