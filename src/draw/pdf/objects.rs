//! A PDF file in the making (ISO 32000-1, 7.3 and 7.5): objects by number, and at the end where each begins.
//!
//! With a library for it (pdf-writer 0.15) and the printing of decimals that it needs, the page weighed 18 317 bytes more.

/// The objects so far.
pub struct Objects {
    bytes: Vec<u8>,
    starts: Vec<usize>,
}

impl Default for Objects {
    /// A file of version 1.7, whose second line says that it is no plain text (7.5.2).
    fn default() -> Self {
        Self { bytes: b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n".to_vec(), starts: Vec::new() }
    }
}

impl Objects {
    /// Adds an object and gives its number; objects are numbered from 1 in their order.
    pub fn add(&mut self, body: &str) -> usize {
        self.starts.push(self.bytes.len());
        let number = self.starts.len();
        self.bytes.extend(format!("{number} 0 obj\n{body}\nendobj\n").into_bytes());
        number
    }

    /// Adds a stream, such as what is drawn on a page.
    pub fn stream(&mut self, drawn: &str) -> usize {
        self.add(&format!("<</Length {}>>stream\n{drawn}\nendstream", drawn.len()))
    }

    /// The file, whose catalogue and information are these objects.
    #[must_use]
    pub fn finish(mut self, root: usize, info: usize) -> Vec<u8> {
        let (at, size) = (self.bytes.len(), self.starts.len() + 1);
        // Each line has twenty bytes (7.5.4); the first is for objects that are no more.
        let mut table = format!("xref\n0 {size}\n0000000000 65535 f \n");
        table.extend(self.starts.iter().map(|start| format!("{start:010} 00000 n \n")));
        table.push_str(&format!("trailer\n<</Size {size}/Root {root} 0 R/Info {info} 0 R>>\nstartxref\n{at}\n%%EOF\n"));
        self.bytes.extend(table.into_bytes());
        self.bytes
    }
}

/// Words for those who read the file, not its pages: any character (7.9.2.2, UTF-16 after its mark).
///
/// ```
/// # use snugfold::draw::pdf::objects::words;
/// assert_eq!(words("é)"), "<feff00e90029>");
/// ```
#[must_use]
pub fn words(words: &str) -> String {
    let units = words.encode_utf16().map(|unit| format!("{unit:04x}"));
    format!("<feff{}>", units.collect::<String>())
}

/// Bytes as a string that holds whatever they are (7.3.4.3).
#[must_use]
pub fn bytes(bytes: &[u8]) -> String {
    format!("<{}>", bytes.iter().map(|b| format!("{b:02x}")).collect::<String>())
}
