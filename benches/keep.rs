//! How long links, files and saved sets take: medians of many runs, printed, never asserted.
//!
//! `cargo bench --bench keep`
#![allow(clippy::disallowed_types, reason = "a bench is about the clock")]

mod clock;

use clock::median_us;

use snugfold::keep::file::{self, Kept};
use snugfold::keep::link;
use snugfold::keep::notebook::Notebook;
use snugfold::keep::shelf::MemoryShelf;
use snugfold::project::example::example;

fn main() {
    let Some(mut project) = example() else { return };
    let fragment = link::write(&project).unwrap_or_default();
    let text = file::write(&Kept::new(project.clone()));
    let many: Vec<Kept> = (0..500).map(|_| Kept::new(project.clone())).collect();
    let all = file::write_all(&many).concat();
    let say = |name: &str, us: f64| println!("{name:>28}: {us:9.1} µs");
    println!("{:>28}: {} characters, {} bytes", "link, file", fragment.len(), text.len());
    say("write a link", median_us(500, || link::write(&project)));
    say("read a link", median_us(500, || link::read(&fragment)));
    let noise = "snug1.A".repeat(150_000);
    say("refuse 1 MB of noise", median_us(500, || link::read(&noise)));
    say("write a file", median_us(500, || file::write(&many[0])));
    say("read a file", median_us(500, || file::read(text.as_bytes())));
    say("read a file of 500 sets", median_us(20, || file::read(all.as_bytes())));
    let mut notebook = Notebook::new(MemoryShelf::default(), 1);
    let mut open = None;
    for now in 0..500 {
        open = notebook.create(&project, now).ok();
    }
    if let Some(mut open) = open {
        let mut turn = 0;
        let mut save = || {
            turn += 1;
            project.sets = turn;
            notebook.save(&mut open, &project, 500 + u64::from(turn))
        };
        say("save one of 500 sets", median_us(200, &mut save));
    }
    say("list 500 sets", median_us(20, || notebook.list()));
}
