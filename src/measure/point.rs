//! Points and vectors on the flat card.

use std::ops::{Add, Sub};

use super::length::Length;

/// A place on the flat card, outside face up: x to the right, y downward, from the blank's upper left corner,
/// as a maker reads it from the left and top edges.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Point {
    /// To the right.
    pub x: Length,
    /// Downward.
    pub y: Length,
}

/// A way from one place to another. Points differ from vectors: two points cannot be added.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Vector {
    /// To the right.
    pub x: Length,
    /// Downward.
    pub y: Length,
}

impl Point {
    /// At `x`, `y`.
    #[must_use]
    pub const fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }
}

impl Vector {
    /// `x` right and `y` down.
    #[must_use]
    pub const fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }

    /// The cross product, in square nanometres: positive where `other` lies clockwise as seen on the card.
    #[must_use]
    pub const fn cross(self, other: Self) -> i128 {
        self.x.nm() as i128 * other.y.nm() as i128 - self.y.nm() as i128 * other.x.nm() as i128
    }

    /// The dot product, in square nanometres.
    #[must_use]
    pub const fn dot(self, other: Self) -> i128 {
        self.x.nm() as i128 * other.x.nm() as i128 + self.y.nm() as i128 * other.y.nm() as i128
    }
}

impl Sub for Point {
    type Output = Vector;
    fn sub(self, other: Self) -> Vector {
        Vector::new(self.x - other.x, self.y - other.y)
    }
}

impl Add<Vector> for Point {
    type Output = Self;
    fn add(self, way: Vector) -> Self {
        Self::new(self.x + way.x, self.y + way.y)
    }
}

impl Sub<Vector> for Point {
    type Output = Self;
    fn sub(self, way: Vector) -> Self {
        Self::new(self.x - way.x, self.y - way.y)
    }
}
