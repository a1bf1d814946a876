//! From creases to panels in space: how a part folds, whether it closes, whether anything crosses, what is inside.

pub mod cross;
pub mod join;
pub mod motion;
pub mod pose;
pub mod hollow;
pub mod prove;
pub mod room;
pub mod solid;
pub mod space;
pub mod tuck;
