//! What is round the bytes of a link: the name and version in front, base64url, the length, and the checksum.
//!
//! `snug` + version + `.` + base64url (RFC 4648 §5, no padding) of: the number of bytes in the body, CRC-32 of the body
//! (ISO-HDLC, as in zip files; lowest byte first), the body. The length stands in front, so that a link that was cut
//! short is told from one that was changed.

use super::LinkError;
use super::wire::{Reader, Writer};

/// The version that is written.
pub const VERSION: u32 = 1;
/// The most bytes that a body may have. Chat programs and browsers pass on links of twice that.
pub const MOST: usize = 48 * 1024;

const NAME: &str = "snug";
/// Characters of a link whose body is as long as can be, with room for a pasted address before it.
const MOST_CHARACTERS: usize = MOST / 3 * 4 + 4_096;
/// What people and programs write right behind a link.
const BEHIND: [char; 13] = ['.', ',', ';', ':', '!', '?', ')', ']', '>', '"', '\'', '”', '’'];
const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Seals a body of version 1.
///
/// # Errors
/// [`LinkError::TooLong`] where it has more bytes than a link carries.
pub fn close(body: &[u8]) -> Result<String, LinkError> {
    if body.len() > MOST {
        return Err(LinkError::TooLong);
    }
    let mut sealed = Writer::default();
    sealed.count(body.len());
    sealed.bytes.extend_from_slice(&crc32(body).to_le_bytes());
    sealed.bytes.extend_from_slice(body);
    Ok(format!("{NAME}{VERSION}.{}", to_text(&sealed.bytes)))
}

/// The body of a sealed link of version 1. Takes a whole address too, what a chat program broke into lines, and a full
/// stop or bracket behind it.
///
/// # Errors
/// What is wrong with the link.
pub fn open(link: &str) -> Result<Vec<u8>, LinkError> {
    if link.len() > MOST_CHARACTERS {
        return Err(LinkError::NotALink);
    }
    let fragment = link.rsplit_once('#').map_or(link, |(_, fragment)| fragment);
    let text: String = fragment.chars().filter(|c| !c.is_whitespace()).collect();
    let text = text.trim_end_matches(BEHIND);
    let rest = text.strip_prefix(NAME).ok_or(LinkError::NotALink)?;
    let Some((version, code)) = rest.split_once('.') else {
        return Err(if rest.bytes().all(|b| b.is_ascii_digit()) { LinkError::Cut } else { LinkError::NotALink });
    };
    match version.parse::<u32>() {
        Ok(VERSION) if version.len() == 1 => unwrap(code),
        Ok(newer) if newer > VERSION && !version.starts_with(['0', '+']) => Err(LinkError::Newer),
        _ => Err(LinkError::NotALink),
    }
}

fn unwrap(code: &str) -> Result<Vec<u8>, LinkError> {
    let (bytes, idle) = from_text(code).ok_or(LinkError::Damaged)?;
    let mut reader = Reader::new(&bytes);
    // Without its length or checksum a link is cut very short indeed.
    let count: usize =
        reader.narrow().map_err(|_| if bytes.len() < 3 { LinkError::Cut } else { LinkError::Damaged })?;
    if count > MOST {
        return Err(LinkError::Damaged);
    }
    let sum = reader.take(4).map_err(|_| LinkError::Cut)?;
    let body = reader.take(count).map_err(|_| LinkError::Cut)?;
    if idle || reader.end().is_err() || crc32(body).to_le_bytes() != sum {
        return Err(LinkError::Damaged);
    }
    Ok(body.to_vec())
}

/// CRC-32/ISO-HDLC, bit by bit: a link is short.
fn crc32(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(!0_u32, |sum, &byte| {
        (0..8).fold(sum ^ u32::from(byte), |s, _| if s & 1 == 1 { s >> 1 ^ 0xedb8_8320 } else { s >> 1 })
    })
}

fn to_text(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let bits = three.iter().fold(0_u32, |bits, &b| bits << 8 | u32::from(b)) << (8 * (3 - three.len()));
        for i in 0..=three.len() {
            text.push(char::from(ALPHABET[(bits >> (18 - 6 * i) & 63) as usize]));
        }
    }
    text
}

/// The bytes, and whether bits behind the last of them are set that no link sets. Nothing where a character is none of
/// the alphabet.
fn from_text(text: &str) -> Option<(Vec<u8>, bool)> {
    let mut bytes = Vec::with_capacity(text.len() / 4 * 3 + 3);
    let (mut bits, mut held) = (0_u32, 0_u32);
    for c in text.bytes() {
        let six = match c {
            b'A'..=b'Z' => c - b'A',
            b'a'..=b'z' => c - b'a' + 26,
            b'0'..=b'9' => c - b'0' + 52,
            b'-' => 62,
            b'_' => 63,
            _ => return None,
        };
        bits = bits << 6 | u32::from(six);
        held += 6;
        if held >= 8 {
            held -= 8;
            bytes.push((bits >> held) as u8);
            bits &= (1 << held) - 1;
        }
    }
    Some((bytes, bits != 0 || held == 6))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The check value in the catalogue of parametrised CRC algorithms (G. Cook), and that of the empty text.
    #[test]
    fn the_sum_is_the_one_of_zip_files() {
        assert_eq!(crc32(b"123456789"), 0xcbf4_3926);
        assert_eq!(crc32(b""), 0);
    }

    /// RFC 4648 §10, without the padding; and the two characters that are not those of §4.
    #[test]
    fn the_text_is_base64url() {
        for (bytes, text) in
            [("", ""), ("f", "Zg"), ("fo", "Zm8"), ("foo", "Zm9v"), ("foob", "Zm9vYg"), ("fooba", "Zm9vYmE")]
        {
            assert_eq!(to_text(bytes.as_bytes()), text);
            assert_eq!(from_text(text), Some((bytes.as_bytes().to_vec(), false)));
        }
        assert_eq!(to_text(&[0xfb, 0xff]), "-_8");
        assert_eq!(from_text("Zh"), Some((b"f".to_vec(), true)));
        assert_eq!(from_text("Z"), Some((vec![], true)));
        assert_eq!(from_text("Zg=="), None);
    }

    #[test]
    fn each_fault_has_its_name() {
        let link = close(b"a body that says something").expect("it is short");
        assert_eq!(open(&link).as_deref(), Ok(&b"a body that says something"[..]));
        for cut in "snug".len()..link.len() {
            assert_eq!(open(&link[..cut]), Err(LinkError::Cut), "{}", &link[..cut]);
        }
        for (i, c) in link.char_indices().skip("snug1.".len()) {
            let other = if c == 'A' { 'B' } else { 'A' };
            let changed = format!("{}{other}{}", &link[..i], &link[i + 1..]);
            assert!(matches!(open(&changed), Err(LinkError::Damaged | LinkError::Cut)), "{changed}");
        }
        assert_eq!(open(&link.replace("snug1", "snug2")), Err(LinkError::Newer));
        assert_eq!(open(&link.replace("snug1", "snug007")), Err(LinkError::NotALink));
        assert_eq!(open(&format!("{link}AAAA")), Err(LinkError::Damaged));
        for other in ["", "#", "snu", "top", "snugly.x", "page/2", "snug-1.AAAA"] {
            assert_eq!(open(other), Err(LinkError::NotALink), "{other}");
        }
        assert_eq!(close(&vec![0; MOST + 1]), Err(LinkError::TooLong));
        assert!(close(&vec![0; MOST]).is_ok_and(|l| open(&l).is_ok()));
    }

    #[test]
    fn what_other_programs_do_to_a_link_is_undone() {
        let link = close(b"a body").expect("it is short");
        let (a, b) = link.split_at(8);
        for text in [format!("https://maker.example/paper/#{link}"), format!(" {a}\r\n{b}. "), format!("<#{link}>,")] {
            assert_eq!(open(&text).as_deref(), Ok(&b"a body"[..]), "{text}");
        }
    }
}
