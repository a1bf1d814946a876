//! One control that folds a part, from flat to finished.

use leptos::prelude::*;

use super::alive::Alive;
use super::child::words;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, State};
use crate::say::page;
use crate::web::motion;

/// Thousandths of a move that the slider tells apart.
const FINE: f64 = 100.0;
/// How many moves are made in a second when it folds by itself.
const MOVES_PER_SECOND: f64 = 0.9;

/// A slider from 0 to the number of moves, and a button that moves it.
#[must_use]
pub fn fold_control(progress: State<f64>, moves: Fact<usize>) -> Tag {
    let (playing, alive) = (State::new(false), Alive::here());
    let most = move || moves.get() as f64;
    // For what is not drawn anew by it.
    let end = move || moves.get_untracked() as f64;
    let play = move || {
        if playing.get_untracked() {
            playing.set(false);
            return;
        }
        if motion::is_reduced() {
            // Move by move, without anything between.
            let next = progress.get_untracked().floor() + 1.0;
            progress.set(if next > end() { 0.0 } else { next });
            return;
        }
        if progress.get_untracked() >= end() {
            progress.set(0.0);
        }
        playing.set(true);
        alive.each_frame(move |seconds| {
            if !playing.get_untracked() {
                return motion::Again::No;
            }
            let next = progress.get_untracked() + seconds * MOVES_PER_SECOND;
            progress.set(next.min(end()));
            if next >= end() {
                playing.set(false);
                return motion::Again::No;
            }
            motion::Again::Yes
        });
    };
    let slide = move |event| {
        playing.set(false);
        if let Ok(at) = event_target_value(&event).parse::<i32>() {
            progress.set((f64::from(at) / FINE).clamp(0.0, end()));
        }
    };
    let says = words(move || if playing.get() { page::PAUSE } else { page::PLAY }.to_owned());
    let slider = tag("input")
        .is("id", "fold-slider")
        .is("type", "range")
        .is("min", "0")
        .follows("max", move || Some(((most() * FINE) as i64).to_string()))
        .is("step", "5")
        .value(move || ((progress.get() * FINE) as i64).to_string())
        .on("input", slide);
    classed("div", "fold")
        .with(button(says, play))
        .with(tag("label").is("for", "fold-slider").with(page::FOLD))
        .with(slider)
}
