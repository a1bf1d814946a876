//! Layouts of any batch can be cut: every one is replayed by the checker.

use proptest::prelude::*;
use snugfold::cut::build::lay_out;
use snugfold::cut::check::check;
use snugfold::cut::layout::{Layout, Proof, Remark, Why};
use snugfold::cut::piece::{Piece, Turn};
use snugfold::cut::sheet::{Rules, Sheet, Stock};
use snugfold::measure::length::Length;

fn piece(id: u32, width: Length, height: Length, count: u32) -> Piece {
    Piece {
        id,
        width,
        height,
        count,
        turn: Turn::Free,
    }
}

fn inch(n: i64, d: i64) -> Length {
    Length::inches(n, d)
}

fn square() -> Sheet {
    Sheet {
        id: 0,
        width: inch(12, 1),
        height: inch(12, 1),
        stock: Stock::Buy,
        price: None,
    }
}

fn laid(pieces: &[Piece], sheets: &[Sheet], rules: &Rules) -> Layout {
    let layout = lay_out(pieces, sheets, rules);
    assert_eq!(check(pieces, sheets, rules, &layout), []);
    layout
}

#[test]
fn nine_panels_come_of_one_sheet_where_turning_helps() {
    let rules = Rules::default();
    let layout = laid(&[piece(1, inch(4, 1), inch(4, 1), 9)], &[square()], &rules);
    assert_eq!((layout.sheets(), layout.proof()), (1, Proof::Fewest));
    assert!(
        layout.patterns[0]
            .tree
            .largest_offcut(inch(12, 1), inch(12, 1))
            .is_none()
    );
}

#[test]
fn no_pinwheel() {
    // Four 5½ × 6½ in would go on 12 × 12 in as a pinwheel, which no trimmer cuts.
    let layout = laid(
        &[piece(1, inch(11, 2), inch(13, 2), 4)],
        &[square()],
        &Rules::default(),
    );
    assert_eq!(layout.sheets(), 2);
}

#[test]
fn bad_input_is_answered() {
    let rules = Rules::default();
    let a4 = Sheet {
        id: 1,
        width: Length::mm(210),
        height: Length::mm(297),
        stock: Stock::Have(1),
        price: None,
    };
    let why = |pieces: &[Piece], sheets: &[Sheet], rules: &Rules| {
        let layout = laid(pieces, sheets, rules);
        layout
            .left_out
            .iter()
            .map(|o| (o.piece, o.count, o.why))
            .collect::<Vec<_>>()
    };
    let one = |w, h, n| [piece(5, Length::mm(w), Length::mm(h), n)];
    assert_eq!(why(&one(100, 100, 1), &[], &rules), [(5, 1, Why::NoSheets)]);
    assert_eq!(
        why(&one(300, 100, 2), std::slice::from_ref(&a4), &rules),
        [(5, 2, Why::TooLarge)]
    );
    assert_eq!(
        why(&one(200, 200, 3), std::slice::from_ref(&a4), &rules),
        [(5, 2, Why::StockRanOut)]
    );
    assert_eq!(
        why(&one(100, 9, 3), std::slice::from_ref(&a4), &rules),
        [(5, 3, Why::TooThin)]
    );
    assert_eq!(
        why(&one(0, 9, 3), std::slice::from_ref(&a4), &rules),
        [(5, 3, Why::NoSize)]
    );
    assert_eq!(
        why(&one(-7, 90, 3), std::slice::from_ref(&a4), &rules),
        [(5, 3, Why::NoSize)]
    );
    let short = Rules {
        longest_cut: Some(Length::mm(200)),
        ..Rules::default()
    };
    assert_eq!(
        why(&one(100, 100, 1), std::slice::from_ref(&a4), &short),
        [(5, 1, Why::TrimmerTooShort)]
    );
    let wide = Rules {
        edge_trim: Length::mm(105),
        ..Rules::default()
    };
    assert_eq!(
        why(&one(100, 100, 1), std::slice::from_ref(&a4), &wide),
        [(5, 1, Why::NoSheets)]
    );
    let fixed = Piece {
        turn: Turn::Fixed,
        ..piece(5, Length::mm(290), Length::mm(100), 1)
    };
    assert_eq!(
        why(&[fixed], std::slice::from_ref(&a4), &rules),
        [(5, 1, Why::TooLarge)]
    );
    let none = laid(&one(100, 100, 0), &[a4], &rules);
    assert_eq!(none.remarks, [Remark::NothingAsked { piece: 5 }]);
    assert!(none.patterns.is_empty() && none.left_out.is_empty());
}

#[test]
fn a_long_sheet_is_cut_across_first() {
    // A3 at a 305 mm trimmer: the first cut must be the short way, and so must the trimming.
    let a3 = Sheet {
        id: 1,
        width: Length::mm(297),
        height: Length::mm(420),
        stock: Stock::Buy,
        price: None,
    };
    for trim in [0, 3] {
        let rules = Rules {
            longest_cut: Some(Length::mm(305)),
            edge_trim: Length::mm(trim),
            ..Rules::default()
        };
        let pieces = [
            piece(1, Length::mm(140), Length::mm(200), 4),
            piece(2, Length::mm(60), Length::mm(40), 3),
        ];
        let layout = laid(&pieces, std::slice::from_ref(&a3), &rules);
        assert!(layout.left_out.is_empty());
        assert!(layout.sheets() <= 2);
    }
}

fn a_piece(id: u32) -> impl Strategy<Value = Piece> {
    (1_i64..320, 1_i64..320, 0_u32..9, any::<bool>()).prop_map(move |(w, h, count, free)| Piece {
        id,
        width: Length::mm(w),
        height: Length::mm(h),
        count,
        turn: if free { Turn::Free } else { Turn::Fixed },
    })
}

fn a_sheet(id: u32) -> impl Strategy<Value = Sheet> {
    (
        100_i64..500,
        100_i64..500,
        0_u32..12,
        proptest::option::of(1_u32..500),
    )
        .prop_map(move |(w, h, have, price)| Sheet {
            id,
            width: Length::mm(w),
            height: Length::mm(h),
            stock: if have > 5 {
                Stock::Buy
            } else {
                Stock::Have(have)
            },
            price,
        })
}

fn a_batch() -> impl Strategy<Value = (Vec<Piece>, Vec<Sheet>, Rules)> {
    let pieces = (1_u32..12).prop_flat_map(|n| (0..n).map(a_piece).collect::<Vec<_>>());
    let sheets = (0_u32..4).prop_flat_map(|n| (0..n).map(a_sheet).collect::<Vec<_>>());
    let rules = (0_i64..12, proptest::option::of(150_i64..450), 0_i64..20).prop_map(
        |(trim, longest, least)| Rules {
            edge_trim: Length::mm(trim),
            longest_cut: longest.map(Length::mm),
            least_strip: Length::mm(least),
        },
    );
    (pieces, sheets, rules)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn quick_layouts_can_be_cut((pieces, sheets, rules) in a_batch()) {
        let layout = lay_out(&pieces, &sheets, &rules);
        prop_assert_eq!(check(&pieces, &sheets, &rules, &layout), []);
        prop_assert!(layout.bound <= layout.sheets());
        prop_assert_eq!(&layout, &lay_out(&pieces, &sheets, &rules));
    }
}
