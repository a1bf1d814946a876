//! Vectors and rigid motions in space, in millimetres.

use std::ops::{Add, Mul, Neg, Sub};

/// A place or way in space, in millimetres: to the right, to the back, up.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct V3 {
    /// To the right.
    pub x: f64,
    /// To the back.
    pub y: f64,
    /// Up.
    pub z: f64,
}

impl V3 {
    /// From its three parts.
    #[must_use]
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// The dot product.
    #[must_use]
    pub const fn dot(self, o: Self) -> f64 {
        self.x * o.x + self.y * o.y + self.z * o.z
    }

    /// The cross product.
    #[must_use]
    pub const fn cross(self, o: Self) -> Self {
        Self::new(self.y * o.z - self.z * o.y, self.z * o.x - self.x * o.z, self.x * o.y - self.y * o.x)
    }

    /// Its length.
    #[must_use]
    pub fn norm(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// One long, or nothing where it has no length.
    #[must_use]
    pub fn unit(self) -> Self {
        let n = self.norm();
        if n > 0.0 { self * (1.0 / n) } else { self }
    }
}

impl Add for V3 {
    type Output = Self;
    fn add(self, o: Self) -> Self {
        Self::new(self.x + o.x, self.y + o.y, self.z + o.z)
    }
}

impl Sub for V3 {
    type Output = Self;
    fn sub(self, o: Self) -> Self {
        Self::new(self.x - o.x, self.y - o.y, self.z - o.z)
    }
}

impl Mul<f64> for V3 {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        Self::new(self.x * by, self.y * by, self.z * by)
    }
}

impl Neg for V3 {
    type Output = Self;
    fn neg(self) -> Self {
        self * -1.0
    }
}

/// A turn and a shift: where a flat panel stands in space.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rigid {
    /// Where the three axes go.
    pub axes: [V3; 3],
    /// Where the origin goes.
    pub origin: V3,
}

impl Rigid {
    /// Everything stays where it is.
    pub const STAY: Self = Self {
        axes: [V3::new(1.0, 0.0, 0.0), V3::new(0.0, 1.0, 0.0), V3::new(0.0, 0.0, 1.0)],
        origin: V3::new(0.0, 0.0, 0.0),
    };

    /// A turn by `radians`, right-handed, about the line through `point` along the unit `axis`
    /// (Rodrigues' rotation formula).
    #[must_use]
    pub fn about(point: V3, axis: V3, radians: f64) -> Self {
        let (s, c) = (libm::sin(radians), libm::cos(radians));
        let turned = |v: V3| v * c + axis.cross(v) * s + axis * (axis.dot(v) * (1.0 - c));
        let axes = Self::STAY.axes.map(turned);
        Self { axes, origin: point - turned(point) }
    }

    /// Turns a way, without shifting it.
    #[must_use]
    pub fn turn(&self, v: V3) -> V3 {
        self.axes[0] * v.x + self.axes[1] * v.y + self.axes[2] * v.z
    }

    /// Moves a place.
    #[must_use]
    pub fn apply(&self, p: V3) -> V3 {
        self.origin + self.turn(p)
    }

    /// Where a place came from.
    #[must_use]
    pub fn back(&self, p: V3) -> V3 {
        let d = p - self.origin;
        V3::new(d.dot(self.axes[0]), d.dot(self.axes[1]), d.dot(self.axes[2]))
    }

    /// First `inner`, then `self`.
    #[must_use]
    pub fn after(&self, inner: &Self) -> Self {
        Self { axes: inner.axes.map(|a| self.turn(a)), origin: self.apply(inner.origin) }
    }

    /// Shifted by `way` in space.
    #[must_use]
    pub fn shifted(mut self, way: V3) -> Self {
        self.origin = self.origin + way;
        self
    }
}
