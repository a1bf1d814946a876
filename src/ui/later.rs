//! The parts of the walk that nobody sees first: they come in a file of their own while the first is looked at.
//!
//! What only [`view`] leads to is in that file (`xtask/apart`); in tests and in the page under development all is in one.

use super::desk::desk;
use super::drawn_editor::drawn_editor;
use super::kept_view::kept_view;
use super::sheets_view::sheets_view;
use super::steps_view::steps_view;
use super::tag::{Tag, button, classed, tag};
use super::teach_view::teach_view;
use super::value::State;
use super::walk::Walk;
use crate::project::finding::Place;
use crate::say::page;
use std::future::Future;
use std::task::{Context, Poll, Waker};

/// How far the file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Arrival {
    Coming,
    Here,
    Missing,
}

/// The file with the later parts.
#[derive(Clone, Copy)]
pub struct Later(State<Arrival>);

impl Later {
    /// Sends for the file.
    #[must_use]
    pub fn fetch() -> Self {
        let later = Self(State::new(Arrival::Coming));
        later.send();
        later
    }

    fn send(self) {
        self.0.set(Arrival::Coming);
        let desk = desk();
        leptos::task::spawn_local(async move {
            let came = file::fetch().await.is_ok() && file::open_door().await;
            if came {
                desk.whole.set(true);
            }
            self.0.set(if came { Arrival::Here } else { Arrival::Missing });
        });
    }

    /// This part of the walk, or how far it is.
    #[must_use]
    pub fn view(self, what: What) -> Tag {
        match self.0.get() {
            Arrival::Here => at_once(file::view(what)).unwrap_or_else(|| self.missing()),
            Arrival::Coming => classed("p", "hint").is("role", "status").with(page::COMING),
            Arrival::Missing => self.missing(),
        }
    }

    fn missing(self) -> Tag {
        tag("div")
            .is("role", "alert")
            .with(tag("p").with(page::NOT_ARRIVED))
            .with(button(page::TRY_AGAIN, move || self.send()))
    }
}

/// What is there without waiting, as everything is in a file that has come.
fn at_once<T, E>(coming: impl Future<Output = Result<T, E>>) -> Option<T> {
    match std::pin::pin!(coming).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(Ok(here)) => Some(here),
        Poll::Ready(Err(_)) | Poll::Pending => None,
    }
}

/// What is in the file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// A part of the walk.
    Walk(Walk),
    /// The form of a box that its maker draws.
    Drawn(Place),
}

/// The later parts themselves.
fn view(what: What) -> Tag {
    match what {
        What::Walk(Walk::Set | Walk::Flat) => tag("div"),
        What::Walk(Walk::Sheets) => sheets_view(),
        What::Walk(Walk::Steps) => steps_view(),
        What::Walk(Walk::Teach) => teach_view(),
        What::Walk(Walk::Kept) => kept_view(),
        What::Drawn(place) => drawn_editor(place),
    }
}

#[cfg(apart)]
mod file {
    use super::{Tag, What};
    use crate::form::own::door::{Behind, behind, came};
    use wasm_split_helpers::{SplitLoaderError, wasm_split};

    #[wasm_split(later, preload(fetch), fallible)]
    pub(super) fn view(what: What) -> Result<Tag, SplitLoaderError> {
        Ok(super::view(what))
    }

    #[wasm_split(later, fallible)]
    fn door() -> Result<Behind, SplitLoaderError> {
        Ok(behind())
    }

    /// Lets drawn forms be planned.
    pub(super) async fn open_door() -> bool {
        door().await.map(came).is_ok()
    }
}

#[cfg(not(apart))]
mod file {
    use super::{Tag, What};
    use std::convert::Infallible;

    pub(super) async fn fetch() -> Result<(), Infallible> {
        Ok(())
    }

    /// All is in one file: the door is open.
    pub(super) async fn open_door() -> bool {
        true
    }

    pub(super) async fn view(what: What) -> Result<Tag, Infallible> {
        Ok(super::view(what))
    }
}
