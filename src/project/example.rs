//! The worked example that a first visitor lands on.
