//! A small linear programme: the cheapest mix of columns that covers every row, by the revised simplex method.
//!
//! Plain `f64` sums and products in a fixed order, so the same on every device. Nothing is proved by it: bounds are
//! computed from its duals in whole numbers (`columns`).

/// Values below this count as nothing.
const TINY: f64 = 1e-9;

/// A column must save more than this to come in.
pub const SAVING: f64 = 1e-7;

/// Demands are raised by this, times a number up to a hundred or so that differs from row to row.
const RAISE: f64 = 1e-7;

/// A column: its cost and what it gives to each row.
#[derive(Clone, Debug)]
pub struct Column {
    /// Cost of one; the dearest board should cost about one.
    pub cost: f64,
    /// Row and how much.
    pub gives: Vec<(u32, f64)>,
}

/// The programme with a basis that covers all rows.
#[derive(Clone, Debug)]
pub struct Simplex {
    columns: Vec<Column>,
    basis: Vec<usize>,
    /// Inverse of the basis, row by row.
    inverse: Vec<f64>,
    /// How much of each basic column.
    amount: Vec<f64>,
}

impl Simplex {
    /// A programme whose first columns give one to one row each, at these costs; they cover the demand at first.
    #[must_use]
    pub fn new(demand: &[f64], costs: &[f64]) -> Self {
        let rows = demand.len();
        let mut inverse = vec![0.0; rows * rows];
        let mut columns = Vec::new();
        for (row, cost) in costs.iter().enumerate() {
            inverse[row * rows + row] = 1.0;
            columns.push(Column { cost: *cost, gives: vec![(row as u32, 1.0)] });
        }
        // Every demand is raised a little and by another amount, so that no two rows tie and the method can't go in
        // circles (perturbation).
        let raise = |row: usize| RAISE * (1.0 + (row * 61 % 97) as f64 + row as f64 / 128.0);
        let amount = demand.iter().enumerate().map(|(row, d)| d + raise(row)).collect();
        Self { columns, basis: (0..rows).collect(), inverse, amount }
    }

    /// How many columns there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.columns.len()
    }

    /// Cost of a column.
    #[must_use]
    pub fn cost(&self, column: usize) -> f64 {
        self.columns[column].cost
    }

    /// Adds a column and returns its number.
    pub fn add(&mut self, column: Column) -> usize {
        self.columns.push(column);
        self.columns.len() - 1
    }

    /// What one more of each row's demand costs at present.
    #[must_use]
    pub fn duals(&self) -> Vec<f64> {
        let rows = self.basis.len();
        let mut duals = vec![0.0; rows];
        for (row, column) in self.basis.iter().enumerate() {
            let cost = self.columns[*column].cost;
            for (dual, inverse) in duals.iter_mut().zip(&self.inverse[row * rows..(row + 1) * rows]) {
                *dual += cost * inverse;
            }
        }
        duals
    }

    /// The column that saves most at these duals; none if none saves anything.
    #[must_use]
    pub fn cheapest(&self, duals: &[f64]) -> Option<usize> {
        let mut best = None;
        let mut least = -SAVING;
        for (at, column) in self.columns.iter().enumerate() {
            let saves = column.cost - worth(column, duals);
            if saves < least {
                least = saves;
                best = Some(at);
            }
        }
        best
    }

    /// Brings a column into the basis; false if it can't be (nothing bounds it, which covering excludes).
    pub fn enter(&mut self, column: usize) -> bool {
        let rows = self.basis.len();
        let mut change = vec![0.0; rows];
        for (row, change) in change.iter_mut().enumerate() {
            for (at, gives) in &self.columns[column].gives {
                *change += self.inverse[row * rows + *at as usize] * gives;
            }
        }
        let mut leaves: Option<(f64, usize, usize)> = None;
        for (row, change) in change.iter().enumerate() {
            if *change > TINY {
                let ratio = self.amount[row].max(0.0) / change;
                // Ties go to the column with the lowest number, so that it can't go round in circles for long.
                if leaves.is_none_or(|l| ratio < l.0 - TINY || (ratio < l.0 + TINY && self.basis[row] < l.1)) {
                    leaves = Some((ratio, self.basis[row], row));
                }
            }
        }
        let Some((ratio, _, row)) = leaves else {
            return false;
        };
        for (amount, change) in self.amount.iter_mut().zip(&change) {
            *amount -= ratio * change;
        }
        self.amount[row] = ratio;
        self.basis[row] = column;
        let pivot: Vec<f64> = self.inverse[row * rows..(row + 1) * rows].iter().map(|v| v / change[row]).collect();
        for (other, &factor) in change.iter().enumerate() {
            let line = &mut self.inverse[other * rows..(other + 1) * rows];
            if other == row {
                line.copy_from_slice(&pivot);
            } else if factor != 0.0 {
                for (value, p) in line.iter_mut().zip(&pivot) {
                    *value -= factor * p;
                }
            }
        }
        true
    }

    /// The columns in use and how much of each.
    pub fn mix(&self) -> impl Iterator<Item = (usize, f64)> + '_ {
        self.basis.iter().copied().zip(self.amount.iter().copied()).filter(|(_, amount)| *amount > TINY)
    }
}

/// What a column gives, at these duals.
#[must_use]
pub fn worth(column: &Column, duals: &[f64]) -> f64 {
    column.gives.iter().map(|(row, gives)| duals[*row as usize] * gives).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_patterns_share_a_demand() {
        // 4 of the first and 6 of the second; patterns give (2, 0), (0, 3) or (1, 2) at one each.
        let mut lp = Simplex::new(&[4.0, 6.0], &[100.0, 100.0]);
        for (a, b) in [(2.0, 0.0), (0.0, 3.0), (1.0, 2.0)] {
            lp.add(Column { cost: 1.0, gives: vec![(0, a), (1, b)] });
        }
        while let Some(column) = lp.cheapest(&lp.duals()) {
            assert!(lp.enter(column));
        }
        let cost: f64 = lp.mix().map(|(_, amount)| amount).sum();
        // Three of (1, 2) and half of (2, 0).
        assert!((cost - 3.5).abs() < 1e-4);
    }
}
