//! SHA-256 as it is written in the page and its list of files.

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use sha2::{Digest, Sha256};

/// The digest in hex.
#[must_use]
pub fn hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// The digest as a content policy names it.
#[must_use]
pub fn policy(bytes: &[u8]) -> String {
    format!("sha256-{}", BASE64_STANDARD.encode(Sha256::digest(bytes)))
}
