//! The parts of the walk that nobody sees first: they come in a file of their own while the first is looked at.
//!
//! What only [`view`] leads to is in that file (`xtask/apart`); in tests and in the page under development all is in one.

use super::kept_view::kept_view;
use super::sheets_view::sheets_view;
use super::steps_view::steps_view;
use super::tag::{Tag, button, classed, tag};
use super::teach_view::teach_view;
use super::value::State;
use super::walk::Walk;
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
        leptos::task::spawn_local(async move {
            let came = file::fetch().await.is_ok();
            self.0.set(if came { Arrival::Here } else { Arrival::Missing });
        });
    }

    /// This part of the walk, or how far it is.
    #[must_use]
    pub fn view(self, walk: Walk) -> Tag {
        match self.0.get() {
            Arrival::Here => at_once(file::view(walk)).unwrap_or_else(|| self.missing()),
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

/// The later parts themselves.
fn view(walk: Walk) -> Tag {
    match walk {
        Walk::Set | Walk::Flat => tag("div"),
        Walk::Sheets => sheets_view(),
        Walk::Steps => steps_view(),
        Walk::Teach => teach_view(),
        Walk::Kept => kept_view(),
    }
}

#[cfg(apart)]
mod file {
    use super::{Tag, Walk};
    use wasm_split_helpers::{SplitLoaderError, wasm_split};

    #[wasm_split(later, preload(fetch), fallible)]
    pub(super) fn view(walk: Walk) -> Result<Tag, SplitLoaderError> {
        Ok(super::view(walk))
    }
}

#[cfg(not(apart))]
mod file {
    use super::{Tag, Walk};
    use std::convert::Infallible;

    pub(super) async fn fetch() -> Result<(), Infallible> {
        Ok(())
    }

    pub(super) async fn view(walk: Walk) -> Result<Tag, Infallible> {
        Ok(super::view(walk))
    }
}
