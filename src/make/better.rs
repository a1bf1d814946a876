//! `Better`: the search for better layouts of all cards, one card after the other, in slices of counted work.

use crate::project::ticks::Ticks;

use super::sheets::{CardSheets, Job};
use super::step::Step;
use super::steps::cutting;
use crate::cut::search::{Search, Status};
use crate::project::finding::Place;

/// Whether a tick on a sheet that is cut already would be lost if `better` took the place of what `steps` say.
#[must_use]
pub fn loses_ticks(steps: &[Step], better: &CardSheets, ticks: &Ticks) -> bool {
    let place = Place::Card(better.job.card);
    let kept: Vec<String> = cutting(better).into_iter().map(|s| s.key).collect();
    steps.iter().any(|s| s.place == place && ticks.by_anyone(&s.key) && !kept.contains(&s.key))
}

/// Searches that can be stopped and continued. In whatever slices they are run, they end with the same layouts.
#[derive(Clone, Debug)]
pub struct Better {
    waiting: Vec<Job>,
    now: Option<(Job, Search)>,
    all: usize,
    spent: u64,
}

impl Better {
    /// Will search for each of these jobs, in this order.
    #[must_use]
    pub fn new(mut jobs: Vec<Job>) -> Self {
        let all = jobs.len();
        jobs.reverse();
        Self { waiting: jobs, now: None, all, spent: 0 }
    }

    /// Goes on for about so much work; a card's sheets once their search has ended.
    pub fn step(&mut self, work: u64) -> Option<CardSheets> {
        if self.now.is_none() {
            let job = self.waiting.pop()?;
            let search = Search::new(&job.wanted, &job.sheets, &job.rules);
            self.now = Some((job, search));
            return None;
        }
        let (_, search) = self.now.as_mut()?;
        if search.step(work) == Status::Working {
            return None;
        }
        self.spent = self.spent.saturating_add(search.work());
        let found = self.so_far();
        self.now = None;
        found
    }

    /// The sheets of the card that is being worked on, as good as they are by now.
    #[must_use]
    pub fn so_far(&self) -> Option<CardSheets> {
        let (job, search) = self.now.as_ref()?;
        search.is_laid_out().then(|| CardSheets { job: job.clone(), layout: search.layout() })
    }

    /// True once every card has been searched through.
    #[must_use]
    pub fn done(&self) -> bool {
        self.now.is_none() && self.waiting.is_empty()
    }

    /// Counted work so far, over all cards.
    #[must_use]
    pub fn work(&self) -> u64 {
        self.spent.saturating_add(self.now.as_ref().map_or(0, |n| n.1.work()))
    }

    /// How far it has come, 0 to 100.
    #[must_use]
    pub fn percent(&self) -> u32 {
        let now = self.now.as_ref().map_or(0, |n| n.1.percent());
        let open = self.waiting.len() + usize::from(self.now.is_some());
        let whole = 100 * (self.all - open) + now as usize;
        (whole / self.all.max(1)) as u32
    }
}
