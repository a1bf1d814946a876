//! However a link or file is made, reading it takes less than 64 MB, counted by an allocator.
#![cfg(not(target_arch = "wasm32"))]
#![allow(unsafe_code, reason = "an allocator that counts can't be had without")]

use std::alloc::{GlobalAlloc, Layout, System};
use std::sync::atomic::{AtomicUsize, Ordering::Relaxed};

use snugfold::keep::file::{self, MOST_BYTES};
use snugfold::keep::link::{self, seal};

/// The system's allocator, counting what is held and the most that was.
struct Counting;

static HELD: AtomicUsize = AtomicUsize::new(0);
static MOST: AtomicUsize = AtomicUsize::new(0);

unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        let held = HELD.fetch_add(layout.size(), Relaxed) + layout.size();
        MOST.fetch_max(held, Relaxed);
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, at: *mut u8, layout: Layout) {
        HELD.fetch_sub(layout.size(), Relaxed);
        unsafe { System.dealloc(at, layout) }
    }
}

#[global_allocator]
static ALLOCATOR: Counting = Counting;

/// The most bytes held at once while `work` runs, beside what was held before.
fn peak<T>(work: impl FnOnce() -> T) -> usize {
    let before = HELD.load(Relaxed);
    MOST.store(before, Relaxed);
    drop(work());
    MOST.load(Relaxed) - before
}

/// As many of `one` as a file holds, between `before` and `after`.
fn filled(before: &str, one: &str, after: &str) -> Vec<u8> {
    let room = MOST_BYTES - before.len() - after.len();
    let many = one.repeat(room / one.len());
    format!("{before}{}{after}", many.trim_end_matches(',')).into_bytes()
}

/// One test, so that no other one is counted.
#[test]
fn reading_takes_little_memory() {
    const CARD: &str = r#"{"id":1,"grammage":1,"sheet_width":"1mm","sheet_height":"1mm","thickness":"1mm"},"#;
    const BOX: &str = r#"{"form":"","card":1},"#;
    const SET: &str = r#"{"project":{"cards":[],"boxes":[]}},"#;
    const GIFT: &str = r#"{"shape":{"cylinder":{"across":"1mm","height":"1mm"}}},"#;
    let keys: String = (0..190_000).map(|i| format!("\"{i}\":1,")).collect();
    let keys = keys.trim_end_matches(',');
    let mats = r#"{"cards":[],"boxes":[{"form":"","card":1,"mats":{"card":1,"off":["#;
    let inputs = r#"{"cards":[],"boxes":[{"form":"","card":1,"inputs":{"#;
    let gifts = r#"{"cards":[],"boxes":[{"form":"","card":1,"gifts":{"kinds":["#;
    let boxes = |one: &str, n: usize| format!(r#"{{"project":{{"cards":[],"boxes":[{}]}}}},"#, vec![one; n].join(","));
    let many_boxes = boxes(BOX.trim_end_matches(','), 95);
    let few: Vec<String> = (0..64).map(|i| format!("\"{i}\":1")).collect();
    let many_inputs = boxes(&format!(r#"{{"form":"","card":1,"inputs":{{{}}}}}"#, few.join(",")), 4);
    let ticks: Vec<String> = (0..19_000).map(|i| format!("\"{i}\"")).collect();
    let many_ticks = format!(r#"{{"project":{{"cards":[],"boxes":[]}},"ticks":[{}]}},"#, ticks.join(","));
    let files = [
        ("gifts", filled(gifts, GIFT, "]}}]}")),
        ("cards", filled(r#"{"boxes":[],"cards":["#, CARD, "]}")),
        ("boxes", filled(r#"{"cards":[],"boxes":["#, BOX, "]}")),
        ("sets", filled(r#"{"snugfold":1,"sets":["#, SET, "]}")),
        ("panels", filled(mats, "\"\",", "]}}]}")),
        ("inputs", format!("{inputs}{keys}}}}}]}}").into_bytes()),
        ("boxes in sets", filled(r#"{"snugfold":1,"sets":["#, &many_boxes, "]}")),
        ("inputs in sets", filled(r#"{"snugfold":1,"sets":["#, &many_inputs, "]}")),
        ("ticks in sets", filled(r#"{"snugfold":1,"sets":["#, &many_ticks, "]}")),
        ("depth", filled("", "[", "")),
        ("words", filled(r#"{"cards":[],"boxes":[],"name":""#, "x", "\"}")),
    ];
    for (name, file) in &files {
        let most = peak(|| file::read(file));
        println!("{:>9} bytes of {name}: {most} bytes held at most", file.len());
        assert!(most < 64 << 20, "{name}: {most}");
    }
    // A box after the other, each with the mats of the one before: the most that grows from few bytes.
    let long = "x".repeat(60);
    let mut body = vec![0, 0, 0, 200, 1, 32, 0, 2, 1, 64];
    for _ in 0..64 {
        body.push(60);
        body.extend_from_slice(long.as_bytes());
    }
    body.extend([64, 0].repeat(199));
    let sealed = seal::close(&body).expect("it is short");
    let excess = link::read(&sealed).map_err(|e| e.to_string());
    assert!(excess.is_err_and(|e| e.contains("bytes of text")));
    let most = peak(|| link::read(&sealed));
    println!("{:>9} characters of link: {most} bytes held at most", sealed.len());
    assert!(most < 64 << 20, "{most}");
    let noise = "snug1.A".repeat(1 << 17);
    assert!(peak(|| link::read(&noise)) < 1 << 10);
}
