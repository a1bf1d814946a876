//! `Opening`: a file that was opened is read and brought in between frames, however large it is, with a bar and a button
//! that stops it.

use leptos::prelude::*;

use super::alive::Alive;
use super::child::live;
use super::shelf::Shelf;
use super::tag::{Tag, button, classed, tag};
use super::value::{State, fact};
use crate::keep::file::{Kept, Reading};
use crate::keep::notebook::bringing::Bringing;
use crate::say::kept;
use crate::web::motion::{Again, now};

/// The longest stretch of work in a frame, in milliseconds. The clock says when it ends, never what comes of it.
const SLICE: f64 = 8.0;

/// The file that is being brought in.
#[derive(Clone, Copy)]
pub struct Opening {
    shelf: Shelf,
    alive: Alive,
    /// How far it is, from 0 to 100; nothing where none is.
    pub percent: State<Option<usize>>,
    /// Counts up, so that what was begun before ends.
    run: State<u32>,
}

/// One file on its way: read to its end first, so that of a broken one nothing comes in.
struct Work {
    reading: Reading,
    sets: Vec<Kept>,
    bringing: Option<Bringing>,
}

/// What came of a little work.
enum Now {
    /// There is more.
    Working,
    /// All is here.
    Done,
    /// It ends for this reason.
    Failed(String),
}

impl Work {
    /// How many sets are here.
    fn here(&self) -> usize {
        self.bringing.as_ref().map_or(0, |b| b.ids.len())
    }

    fn percent(&self) -> usize {
        50 * (self.sets.len() + self.here()) / self.reading.total().max(1)
    }

    /// Reads one set, or saves one.
    fn step(&mut self, shelf: Shelf) -> Now {
        let failed = |why: &dyn std::fmt::Display| Now::Failed(why.to_string());
        if let Some(read) = self.reading.next() {
            return match read {
                Ok(kept) => {
                    self.sets.push(kept);
                    Now::Working
                }
                Err(why) => failed(&why),
            };
        }
        let Some(bringing) = &mut self.bringing else {
            return match shelf.begin_bringing() {
                Ok(bringing) => {
                    self.bringing = Some(bringing);
                    Now::Working
                }
                Err(why) => failed(&why),
            };
        };
        match self.sets.get(bringing.ids.len()) {
            None => Now::Done,
            Some(kept) => shelf.bring(bringing, kept).map_or_else(|why| failed(&why), |()| Now::Working),
        }
    }
}

impl Opening {
    /// Nothing yet.
    #[must_use]
    pub fn begin(shelf: Shelf) -> Self {
        Self { shelf, alive: Alive::here(), percent: State::new(None), run: State::new(0) }
    }

    /// Begins with the bytes of a file.
    pub fn open(self, bytes: &[u8]) {
        self.shelf.save_now();
        match Reading::begin(bytes) {
            Ok(reading) if reading.total() == 0 => self.shelf.said.set(Some(kept::NO_SETS.to_owned())),
            Ok(reading) => self.work(Work { reading, sets: Vec::new(), bringing: None }),
            Err(why) => self.shelf.said.set(Some(format!("{why}."))),
        }
    }

    /// Ends it; what is here by then stays.
    pub fn stop(self) {
        self.run.update(|r| *r = r.wrapping_add(1));
    }

    fn work(self, mut work: Work) {
        self.stop();
        let mine = self.run.get_untracked();
        self.percent.set(Some(0));
        self.alive.each_frame(move |_| {
            if self.run.get_untracked() != mine {
                self.ended(&work, None);
                return Again::No;
            }
            let until = now() + SLICE;
            loop {
                match work.step(self.shelf) {
                    Now::Working => {}
                    Now::Done => self.done(&work),
                    Now::Failed(why) => self.ended(&work, Some(&why)),
                }
                if self.percent.get_untracked().is_none() {
                    return Again::No;
                }
                if now() >= until {
                    self.percent.set(Some(work.percent()));
                    return Again::Yes;
                }
            }
        });
    }

    /// All is here: the first set is opened.
    fn done(self, work: &Work) {
        self.percent.set(None);
        if let Some(bringing) = &work.bringing {
            self.shelf.said.set(Some(kept::brought_in(bringing.ids.len(), bringing.known)));
            if let Some(first) = bringing.ids.first() {
                self.shelf.open(*first);
            }
        }
    }

    /// Stopped, or broken off.
    fn ended(self, work: &Work, why: Option<&str>) {
        self.percent.set(None);
        let (here, of) = (work.here(), work.reading.total());
        self.shelf.said.set(Some(match why {
            Some(why) if work.bringing.is_none() => format!("{why}."),
            None if here == 0 => kept::STOPPED_AT_ONCE.to_owned(),
            why => kept::brought_in_part(why, here, of),
        }));
        self.shelf.list_anew();
    }

    /// The bar, with the button that stops it.
    #[must_use]
    pub fn bar(self) -> Tag {
        let busy = fact(move || self.percent.with(Option::is_some));
        let tools = move || {
            busy.get().then(|| {
                let how_far = move || self.percent.get().map(|n| n.to_string());
                let bar =
                    tag("progress").is("max", "100").is("aria-label", kept::BRINGING_IN).follows("value", how_far);
                vec![
                    tag("span").is("role", "status").with(kept::BRINGING_IN),
                    bar,
                    button(kept::STOP, move || self.stop()),
                ]
            })
        };
        classed("p", "actions looking").with(live(tools))
    }
}

/// The file that is being brought in on this page.
#[must_use]
pub fn opening() -> Opening {
    expect_context::<Opening>()
}
