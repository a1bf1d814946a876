//! The table of forms as version 1 of file and link knows them: rows are appended, never changed.

use super::Untouched::{self, First, Worked};
use super::{Form, Input};
use crate::measure::system::Native;

const fn input(number: u8, key: &'static str, untouched: Untouched) -> Input {
    Input { number, key, untouched }
}

/// `numerator/denominator` inches or `tenths` tenths of a millimetre.
const fn is(numerator: i64, denominator: i64, tenths: i64) -> Untouched {
    Untouched::Length(Native::lengths(numerator, denominator, tenths))
}

/// Every form of version 1.
pub const FORMS: &[Form] = &[
    Form {
        number: 1,
        key: "tuck-box",
        inputs: &[
            input(1, "width", is(3, 1, 750)),
            input(2, "depth", is(5, 4, 320)),
            input(3, "height", is(5, 1, 1_250)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "tab", is(1, 2, 120)),
            input(6, "tuck", Worked),
            input(7, "notch", First(&["no", "yes"])),
            input(8, "notch-radius", Worked),
        ],
    },
    Form {
        number: 2,
        key: "row-holder",
        inputs: &[
            input(1, "front-height", Worked),
            input(2, "back-height", Worked),
            input(3, "clearance", is(1, 16, 15)),
            input(4, "margin", Worked),
            input(5, "corner-radius", Worked),
            input(6, "straps", First(&["yes", "no"])),
            input(7, "strap-width", Worked),
        ],
    },
    Form {
        number: 3,
        key: "tuck-ends",
        inputs: &[
            input(1, "width", is(3, 1, 750)),
            input(2, "depth", is(5, 4, 320)),
            input(3, "height", is(5, 1, 1250)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "tab", is(1, 2, 120)),
            input(6, "tuck", Worked),
            input(7, "notch", First(&["no", "yes"])),
            input(8, "notch-radius", Worked),
        ],
    },
    Form {
        number: 11,
        key: "lid-base",
        inputs: &[
            input(1, "width", is(4, 1, 1_000)),
            input(2, "depth", is(3, 1, 750)),
            input(3, "height", is(3, 2, 400)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "lid-height", Worked),
            input(6, "clearance", is(1, 16, 15)),
        ],
    },
    Form {
        number: 12,
        key: "drawer",
        inputs: &[
            input(1, "width", is(3, 1, 750)),
            input(2, "depth", is(4, 1, 1_000)),
            input(3, "height", is(5, 4, 320)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "pull", First(&["notch", "ribbon", "none"])),
            input(6, "notch-radius", Worked),
            input(7, "clearance", is(1, 16, 15)),
        ],
    },
    Form {
        number: 17,
        key: "set-tray",
        inputs: &[
            input(1, "rows", First(&["auto", "one", "two", "three", "four", "five", "six"])),
            input(2, "lid-height", Worked),
            input(3, "clearance", is(1, 16, 15)),
            input(4, "room", is(1, 16, 15)),
        ],
    },
    Form {
        number: 13,
        key: "grid-holder",
        inputs: &[
            input(1, "rows", First(&["auto", "one", "two", "three", "four", "five", "six"])),
            input(2, "height", Worked),
            input(3, "clearance", is(1, 16, 15)),
        ],
    },
    Form {
        number: 14,
        key: "band",
        inputs: &[
            input(1, "stand", First(&["row", "stack"])),
            input(2, "breadth", Worked),
            input(3, "clearance", is(1, 16, 15)),
        ],
    },
    Form { number: 15, key: "tower", inputs: &[input(1, "play", is(1, 16, 15)), input(2, "clearance", Worked)] },
    Form {
        number: 16,
        key: "carrier",
        inputs: &[
            input(1, "height", Worked),
            input(2, "handle", is(3, 2, 400)),
            input(3, "flange", is(1, 2, 120)),
            input(4, "clearance", is(1, 16, 15)),
        ],
    },
    Form {
        number: 18,
        key: "book-cover",
        inputs: &[
            input(1, "rows", First(&["auto", "one", "two", "three", "four", "five", "six"])),
            input(2, "room", is(1, 16, 15)),
            input(3, "clearance", is(1, 16, 15)),
        ],
    },
    Form {
        number: 19,
        key: "step-stand",
        inputs: &[
            input(1, "rows", First(&["auto", "one", "two", "three", "four", "five", "six"])),
            input(2, "step", is(3, 2, 400)),
            input(3, "clearance", is(1, 16, 15)),
        ],
    },
    Form {
        number: 20,
        key: "layered-box",
        inputs: &[
            input(1, "side", is(4, 1, 1_000)),
            input(2, "height", is(4, 1, 1_000)),
            input(3, "size", First(&["finished", "inside"])),
            input(4, "layers", First(&["three", "one", "two", "four"])),
            input(5, "shrink", is(1, 2, 120)),
            input(6, "lid-height", Worked),
            input(7, "clearance", is(1, 16, 15)),
        ],
    },
    Form {
        number: 8,
        key: "bag",
        inputs: &[
            input(1, "width", is(7, 2, 850)),
            input(2, "depth", is(2, 1, 500)),
            input(3, "height", is(5, 1, 1_250)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "tab", is(1, 2, 120)),
            input(6, "turn-up", Worked),
            input(7, "hem", First(&["yes", "no"])),
            input(8, "hem-height", Worked),
            input(9, "handles", First(&["holes", "no"])),
        ],
    },
    Form {
        number: 7,
        key: "wallet",
        inputs: &[
            input(1, "width", is(7, 2, 900)),
            input(2, "depth", is(1, 4, 60)),
            input(3, "height", is(9, 4, 600)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "tab", is(1, 2, 120)),
            input(6, "flap", Worked),
            input(7, "corner-radius", Worked),
        ],
    },
    Form {
        number: 4,
        key: "tray",
        inputs: &[
            input(1, "width", is(4, 1, 1_000)),
            input(2, "depth", is(3, 1, 750)),
            input(3, "height", is(1, 1, 250)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "tab", Worked),
            input(6, "notch", First(&["no", "yes"])),
            input(7, "notch-radius", Worked),
        ],
    },
    Form {
        number: 5,
        key: "double-tray",
        inputs: &[
            input(1, "width", is(4, 1, 1_000)),
            input(2, "depth", is(3, 1, 750)),
            input(3, "height", is(1, 1, 250)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "tab", Worked),
        ],
    },
    Form {
        number: 6,
        key: "hinged-box",
        inputs: &[
            input(1, "width", is(4, 1, 1_000)),
            input(2, "depth", is(3, 1, 750)),
            input(3, "height", is(3, 2, 400)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "tab", Worked),
            input(6, "lip", Worked),
        ],
    },
    Form {
        number: 9,
        key: "triangle",
        inputs: &[
            input(1, "width", is(5, 2, 600)),
            input(2, "depth", Worked),
            input(3, "height", is(7, 1, 1_800)),
            input(4, "size", First(&["finished", "inside"])),
            input(5, "tab", is(1, 2, 120)),
            input(6, "tuck", Worked),
        ],
    },
    Form {
        number: 21,
        key: "prism",
        inputs: &[
            input(1, "sides", First(&["six", "five", "seven", "eight"])),
            input(2, "foot", is(2, 1, 500)),
            input(3, "height", is(5, 2, 600)),
            input(4, "lid-height", Worked),
            input(5, "clearance", is(1, 16, 15)),
            input(6, "tab", Worked),
        ],
    },
    Form {
        number: 22,
        key: "pyramid",
        inputs: &[
            input(1, "sides", First(&["four", "three", "five", "six"])),
            input(2, "foot", is(3, 1, 750)),
            input(3, "height", is(4, 1, 1_000)),
            input(4, "hole", is(1, 8, 30)),
            input(5, "closed", First(&["ribbon", "tabs"])),
            input(6, "tab", Worked),
        ],
    },
    Form {
        number: 23,
        key: "frustum",
        inputs: &[
            input(1, "sides", First(&["four", "five", "six", "eight"])),
            input(2, "foot", is(2, 1, 500)),
            input(3, "rim", is(3, 1, 750)),
            input(4, "height", is(4, 1, 1_000)),
            input(5, "tab", Worked),
        ],
    },
    Form {
        number: 24,
        key: "slice",
        inputs: &[
            input(1, "slices", First(&["eight", "six", "seven", "nine", "ten", "twelve"])),
            input(2, "side", is(4, 1, 1_000)),
            input(3, "height", is(2, 1, 500)),
            input(4, "tab", is(1, 2, 120)),
            input(5, "tuck", Worked),
        ],
    },
    Form {
        number: 25,
        key: "favour",
        inputs: &[
            input(1, "sides", First(&["six", "five", "seven", "eight"])),
            input(2, "edge", is(6, 1, 1_500)),
            input(3, "rim", is(2, 1, 500)),
            input(4, "tab", is(3, 8, 100)),
        ],
    },
    Form {
        number: 26,
        key: "petal-box",
        inputs: &[
            input(1, "width", is(5, 2, 600)),
            input(2, "height", is(4, 1, 1_000)),
            input(3, "size", First(&["finished", "inside"])),
            input(4, "tab", is(1, 2, 120)),
        ],
    },
    Form {
        number: 27,
        key: "carton",
        inputs: &[
            input(1, "width", is(3, 1, 750)),
            input(2, "depth", is(5, 2, 600)),
            input(3, "height", is(3, 1, 750)),
            input(4, "slope", Worked),
            input(5, "ridge", is(3, 4, 200)),
            input(6, "hole", is(1, 8, 30)),
            input(7, "size", First(&["finished", "inside"])),
            input(8, "tab", is(1, 2, 120)),
        ],
    },
    Form {
        number: 28,
        key: "corner-box",
        inputs: &[
            input(1, "side", is(3, 1, 750)),
            input(2, "size", First(&["finished", "inside"])),
            input(3, "lid", First(&["yes", "no"])),
            input(4, "clearance", is(1, 16, 15)),
        ],
    },
    Form {
        number: 29,
        key: "pillow",
        inputs: &[
            input(1, "width", is(4, 1, 1_000)),
            input(2, "length", is(5, 1, 1_300)),
            input(3, "curve", Worked),
            input(4, "tab", is(1, 2, 120)),
        ],
    },
    Form {
        number: 30,
        key: "honeycomb",
        inputs: &[input(1, "height", Worked), input(2, "clearance", is(1, 16, 15)), input(3, "tab", is(1, 2, 120))],
    },
    Form {
        number: 40,
        key: "own",
        inputs: &[
            input(1, "width", Worked),
            input(2, "depth", Worked),
            input(3, "height", Worked),
            input(4, "tab", Worked),
            input(5, "tuck", Worked),
            input(6, "flap", Worked),
            input(7, "lip", Worked),
            input(8, "lid", Worked),
            input(9, "rim", Worked),
            input(10, "base", Worked),
            input(11, "step", Worked),
            input(12, "gap", Worked),
            input(13, "second width", Worked),
            input(14, "second depth", Worked),
            input(15, "second height", Worked),
            input(16, "second tab", Worked),
        ],
    },
];
