//! The clock that all benches go by.

use std::hint::black_box;
use std::time::Instant;

/// How many microseconds some work takes, in the middle of so many runs.
pub fn median_us<T>(runs: usize, mut work: impl FnMut() -> T) -> f64 {
    let mut times: Vec<f64> = (0..runs)
        .map(|_| {
            let start = Instant::now();
            black_box(work());
            start.elapsed().as_secs_f64() * 1e6
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}
