//! Layouts of any batch can be cut: every one is replayed by the checker.

use proptest::prelude::*;
use snugfold::cut::build::lay_out;
use snugfold::cut::check::{Fault, check};
use snugfold::cut::layout::{Ending, Node};
use snugfold::cut::layout::{Layout, Proof, Remark, Why};
use snugfold::cut::order::{order, settings};
use snugfold::cut::piece::{Piece, Turn};
use snugfold::cut::search::{Search, Status};
use snugfold::cut::sheet::{Rules, Sheet, Stock};
use snugfold::measure::length::Length;
use snugfold::measure::system::System;

fn piece(id: u32, width: Length, height: Length, count: u32) -> Piece {
    Piece { id, width, height, count, turn: Turn::Free }
}

fn inch(n: i64, d: i64) -> Length {
    Length::inches(n, d)
}

fn square() -> Sheet {
    Sheet { id: 0, width: inch(12, 1), height: inch(12, 1), typed: System::Inch, stock: Stock::Buy, price: None }
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
    assert!(layout.patterns[0].tree.largest_offcut(inch(12, 1), inch(12, 1)).is_none());
}

#[test]
fn no_pinwheel() {
    // Four 5½ × 6½ in would go on 12 × 12 in as a pinwheel, which no trimmer cuts.
    let layout = laid(&[piece(1, inch(11, 2), inch(13, 2), 4)], &[square()], &Rules::default());
    assert_eq!(layout.sheets(), 2);
}

#[test]
fn bad_input_is_answered() {
    let rules = Rules::default();
    let a4 = Sheet {
        id: 1,
        width: Length::mm(210),
        height: Length::mm(297),
        typed: System::Metric,
        stock: Stock::Have(1),
        price: None,
    };
    let why = |pieces: &[Piece], sheets: &[Sheet], rules: &Rules| {
        let layout = laid(pieces, sheets, rules);
        layout.left_out.iter().map(|o| (o.piece, o.count, o.why)).collect::<Vec<_>>()
    };
    let one = |w, h, n| [piece(5, Length::mm(w), Length::mm(h), n)];
    assert_eq!(why(&one(100, 100, 1), &[], &rules), [(5, 1, Why::NoSheets)]);
    assert_eq!(why(&one(300, 100, 2), std::slice::from_ref(&a4), &rules), [(5, 2, Why::TooLarge)]);
    assert_eq!(why(&one(200, 200, 3), std::slice::from_ref(&a4), &rules), [(5, 2, Why::StockRanOut)]);
    assert_eq!(why(&one(100, 9, 3), std::slice::from_ref(&a4), &rules), [(5, 3, Why::TooThin)]);
    assert_eq!(why(&one(0, 9, 3), std::slice::from_ref(&a4), &rules), [(5, 3, Why::NoSize)]);
    assert_eq!(why(&one(-7, 90, 3), std::slice::from_ref(&a4), &rules), [(5, 3, Why::NoSize)]);
    let short = Rules { longest_cut: Some(Length::mm(200)), ..Rules::default() };
    assert_eq!(why(&one(100, 100, 1), std::slice::from_ref(&a4), &short), [(5, 1, Why::TrimmerTooShort)]);
    let wide = Rules { edge_trim: Length::mm(105), ..Rules::default() };
    assert_eq!(why(&one(100, 100, 1), std::slice::from_ref(&a4), &wide), [(5, 1, Why::NoSheets)]);
    let fixed = Piece { turn: Turn::Fixed, ..piece(5, Length::mm(290), Length::mm(100), 1) };
    assert_eq!(why(&[fixed], std::slice::from_ref(&a4), &rules), [(5, 1, Why::TooLarge)]);
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
        typed: System::Metric,
        stock: Stock::Buy,
        price: None,
    };
    for trim in [0, 3] {
        let rules = Rules { longest_cut: Some(Length::mm(305)), edge_trim: Length::mm(trim), ..Rules::default() };
        let pieces = [piece(1, Length::mm(140), Length::mm(200), 4), piece(2, Length::mm(60), Length::mm(40), 3)];
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
    (100_i64..500, 100_i64..500, 0_u32..12, proptest::option::of(1_u32..500)).prop_map(move |(w, h, have, price)| {
        Sheet {
            id,
            width: Length::mm(w),
            height: Length::mm(h),
            typed: System::Metric,
            stock: if have > 5 { Stock::Buy } else { Stock::Have(have) },
            price,
        }
    })
}

fn a_batch() -> impl Strategy<Value = (Vec<Piece>, Vec<Sheet>, Rules)> {
    let pieces = (1_u32..12).prop_flat_map(|n| (0..n).map(a_piece).collect::<Vec<_>>());
    let sheets = (0_u32..4).prop_flat_map(|n| (0..n).map(a_sheet).collect::<Vec<_>>());
    let rules = (0_i64..12, proptest::option::of(150_i64..450), 0_i64..20).prop_map(|(trim, longest, least)| Rules {
        edge_trim: Length::mm(trim),
        longest_cut: longest.map(Length::mm),
        least_strip: Length::mm(least),
    });
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

/// Runs a search to its end, however long its work is, in slices as the page does.
fn searched(pieces: &[Piece], sheets: &[Sheet], rules: &Rules, most: u64) -> Layout {
    let mut search = Search::new(pieces, sheets, rules).most(most);
    while search.step(20_000) == Status::Working {}
    let layout = search.layout();
    assert_eq!(check(pieces, sheets, rules, &layout), []);
    assert_eq!(layout.ending, Ending::Finished);
    layout
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn searched_layouts_can_be_cut((pieces, sheets, rules) in a_batch()) {
        let quick = lay_out(&pieces, &sheets, &rules);
        let layout = searched(&pieces, &sheets, &rules, 300_000);
        prop_assert!(layout.bound <= layout.sheets());
        let missing = |l: &Layout| l.left_out.iter().map(|o| u64::from(o.count)).sum::<u64>();
        if missing(&quick) == 0 {
            prop_assert_eq!(missing(&layout), 0);
        }
    }
}

#[test]
fn a_search_saves_a_sheet_and_says_so() {
    // Two of each pair fill a sheet exactly; taken one after the other they don't.
    let pieces: Vec<Piece> = [(7, 12, 6), (5, 12, 6), (12, 8, 4), (12, 4, 4), (6, 6, 8), (4, 3, 12)]
        .into_iter()
        .zip(0..)
        .map(|((w, h, n), id)| piece(id, inch(w, 1), inch(h, 1), n))
        .collect();
    let layout = searched(&pieces, &[square()], &Rules::default(), 10_000_000);
    assert_eq!((layout.sheets(), layout.proof()), (13, Proof::Fewest));
}

#[test]
fn the_stash_goes_first_and_the_lowest_price_wins() {
    let sheet = |id, mm, stock, price| Sheet {
        id,
        width: Length::mm(mm),
        height: Length::mm(mm),
        typed: System::Metric,
        stock,
        price,
    };
    let pieces = [piece(1, Length::mm(100), Length::mm(100), 20)];
    let sheets = [
        sheet(1, 300, Stock::Have(1), None),
        sheet(2, 400, Stock::Buy, Some(200)),
        sheet(3, 200, Stock::Buy, Some(30)),
    ];
    let layout = searched(&pieces, &sheets, &Rules::default(), 2_000_000);
    // Nine from the drawer; the other eleven in threes of four at 30 each are cheaper than one of sixteen at 200.
    assert_eq!((layout.sheets_of(1), layout.sheets_of(2), layout.sheets_of(3)), (1, 0, 3));
}

#[test]
fn the_offcut_is_whole() {
    // Five quarters of a square: four fill one sheet, the fifth leaves a strip of half a sheet and a quarter.
    let layout = searched(&[piece(1, inch(6, 1), inch(6, 1), 5)], &[square()], &Rules::default(), 1_000_000);
    let largest = layout.patterns.iter().filter_map(|p| p.tree.largest_offcut(inch(12, 1), inch(12, 1))).next();
    let largest = largest.map(|(w, h)| (w.max(h), w.min(h)));
    assert_eq!((layout.sheets(), largest), (2, Some((inch(12, 1), inch(6, 1)))));
}

#[test]
fn the_fence_moves_seldom() {
    let layout = laid(&[piece(1, inch(4, 1), inch(3, 1), 12)], &[square()], &Rules::default());
    let steps = order(&layout.patterns[0], &square());
    // Twelve pieces come of eleven cuts.
    assert_eq!((layout.sheets(), steps.len()), (1, 11));
    assert!(settings(&steps) <= 3, "{}", settings(&steps));
}

#[test]
fn every_wrong_layout_is_found() {
    let pieces =
        [piece(1, inch(5, 1), inch(4, 1), 7), Piece { turn: Turn::Fixed, ..piece(2, inch(3, 1), inch(2, 1), 5) }];
    let rules = Rules::default();
    let sheets = [Sheet { stock: Stock::Have(9), ..square() }];
    let good = laid(&pieces, &sheets, &rules);
    let found = |layout: &Layout, rules: &Rules, sheets: &[Sheet]| check(&pieces, sheets, rules, layout);
    let mut wrong = good.clone();
    wrong.patterns[0].copies += 20;
    let faults = found(&wrong, &rules, &sheets);
    assert!(faults.iter().any(|f| matches!(f, Fault::StockExceeded { .. })));
    assert!(faults.iter().any(|f| matches!(f, Fault::WrongCount { .. })));
    let mut wrong = good.clone();
    wrong.patterns[0].sheet = 99;
    assert!(found(&wrong, &rules, &sheets).contains(&Fault::UnknownSheet { sheet: 99 }));
    let mut wrong = good.clone();
    wrong.patterns[0].copies = 0;
    assert!(found(&wrong, &rules, &sheets).contains(&Fault::NoCopies { pattern: 0 }));
    let short = Rules { longest_cut: Some(inch(11, 1)), ..Rules::default() };
    assert!(found(&good, &short, &sheets).iter().any(|f| matches!(f, Fault::CutTooLong { .. })));
    let trimmed = Rules { edge_trim: Length::mm(3), ..Rules::default() };
    assert!(found(&good, &trimmed, &sheets).iter().any(|f| matches!(f, Fault::EdgeInPiece { .. })));
    let smaller = [Sheet { width: inch(1, 1), ..sheets[0].clone() }];
    assert!(found(&good, &rules, &smaller).iter().any(|f| matches!(f, Fault::CutOutside { .. })));
    // Every cut a millimetre off, every pose the other way, every piece swapped for an offcut.
    for change in 0..3 {
        for nth in 0..good.patterns[0].tree.pieces().len() {
            let mut wrong = good.clone();
            let mut count = nth;
            if spoil(&mut wrong.patterns[0].tree, &mut count, change) {
                assert!(!found(&wrong, &rules, &sheets).is_empty(), "change {change} at {nth}");
            }
        }
    }
}

/// Spoils the nth cut or piece of a tree; false if that would leave it as good as it was.
fn spoil(node: &mut Node, nth: &mut usize, change: u32) -> bool {
    match node {
        Node::Cut { at, low, high, .. } => {
            if change == 0 {
                if *nth == 0 {
                    // Taken from an offcut or a piece: either way something has the wrong size, unless both are waste.
                    let waste = **low == Node::Offcut && **high == Node::Offcut;
                    *at += Length::MM;
                    return !waste;
                }
                *nth -= 1;
            }
            spoil(low, nth, change) || spoil(high, nth, change)
        }
        Node::Piece { pose, .. } if change > 0 => {
            if *nth > 0 {
                *nth -= 1;
                return false;
            }
            *nth = usize::MAX;
            if change == 1 {
                *pose = match pose {
                    snugfold::cut::piece::Pose::Straight => snugfold::cut::piece::Pose::Turned,
                    snugfold::cut::piece::Pose::Turned => snugfold::cut::piece::Pose::Straight,
                };
            } else {
                *node = Node::Offcut;
            }
            true
        }
        Node::Piece { .. } | Node::Offcut => false,
    }
}

#[test]
fn many_pieces_and_many_sizes_are_answered() {
    // 100,000 pieces of a dozen sizes.
    let many: Vec<Piece> = (0..12)
        .map(|i| piece(i, Length::mm(31 + 13 * i64::from(i)), Length::mm(97 + 7 * i64::from(i)), 8_334))
        .collect();
    let a4 = Sheet {
        id: 4,
        width: Length::mm(210),
        height: Length::mm(297),
        typed: System::Metric,
        stock: Stock::Buy,
        price: Some(20),
    };
    let layout = searched(&many, std::slice::from_ref(&a4), &Rules::default(), 3_000_000);
    assert!(layout.left_out.is_empty());
    assert!(f64::from(layout.sheets()) <= f64::from(layout.bound) * 1.01 + 1.0, "{} {}", layout.sheets(), layout.bound);
    assert!(layout.patterns.len() < 200);
    // 500 sizes.
    let sizes: Vec<Piece> = (0..500)
        .map(|i| piece(i, Length::mm(20 + i64::from(i * 37 % 181)), Length::mm(25 + i64::from(i * 53 % 251)), 200))
        .collect();
    let mut search = Search::new(&sizes, std::slice::from_ref(&a4), &Rules::default());
    for _ in 0..20 {
        search.step(20_000);
    }
    let layout = search.layout();
    assert_eq!(layout.ending, Ending::Stopped);
    assert_eq!(check(&sizes, std::slice::from_ref(&a4), &Rules::default(), &layout), []);
}

#[test]
fn strange_amounts_are_no_hang() {
    let big = Sheet {
        id: 1,
        width: Length::mm(9_000),
        height: Length::mm(9_000),
        typed: System::Metric,
        stock: Stock::Buy,
        price: None,
    };
    let rules = Rules { least_strip: Length::ZERO, ..Rules::default() };
    let sheets = std::slice::from_ref(&big);
    // A fifth of a millimetre, four milliards of them; and four thousand sizes.
    let dust = [piece(1, Length::um(200), Length::um(300), u32::MAX)];
    assert_eq!(check(&dust, sheets, &rules, &lay_out(&dust, sheets, &rules)), []);
    let all: Vec<Piece> = (0..4_000)
        .map(|i| {
            piece(i, Length::um(20_000 + 37 * i64::from(i)), Length::um(30_000 + 7_919 * i64::from(i) % 90_000), 3)
        })
        .collect();
    let a4 = Sheet {
        id: 4,
        width: Length::mm(410),
        height: Length::mm(497),
        typed: System::Metric,
        stock: Stock::Buy,
        price: None,
    };
    let quick = lay_out(&all, std::slice::from_ref(&a4), &rules);
    assert!(quick.sheets() > 0);
    let mut search = Search::new(&all, std::slice::from_ref(&a4), &rules);
    for _ in 0..50 {
        search.step(20_000);
    }
    assert_eq!(search.layout().ending, Ending::Stopped);
}
