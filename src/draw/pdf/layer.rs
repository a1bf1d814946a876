//! Layers of a PDF: what is cut, creased and glued, each of which can be switched off by itself.
//!
//! They say what they are by the keys of ISO 19593-1:2018 (processing steps), as the PDF Association's Arlington model
//! lists them (`GTS_ProcStepsGroup`, `GTS_ProcStepsType`). The standard's own text was not at hand.

use pdf_writer::{Dict, Name, Pdf, Ref, TextStr};

use crate::draw::drawing::{Mark, Meaning};

/// What lies in a layer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layer {
    /// What is cut.
    Cut,
    /// What is creased.
    Crease,
    /// What is glued.
    Glue,
    /// Measures.
    Measures,
    /// Words, and lines that say something.
    Words,
}

impl Layer {
    /// In the order in which they are painted.
    pub const ALL: [Self; 5] = [Self::Cut, Self::Crease, Self::Glue, Self::Measures, Self::Words];

    /// What it is called in the file; its group, and its type where the group has types.
    const fn names(self) -> (&'static str, &'static str, Option<&'static str>) {
        match self {
            Self::Cut => ("Cut", "Structural", Some("Cutting")),
            Self::Crease => ("Score", "Structural", Some("Creasing")),
            Self::Glue => ("Glue", "Structural", Some("Gluing")),
            Self::Measures => ("Measures", "Dimensions", None),
            Self::Words => ("Words", "Legend", None),
        }
    }

    /// The layer of a mark, where it has one.
    #[must_use]
    pub const fn of(mark: &Mark) -> Option<Self> {
        match mark {
            Mark::Area(_) => None,
            Mark::Label(_) => Some(Self::Words),
            Mark::Line(line) => Some(match line.meaning {
                Meaning::Cut | Meaning::Edge => Self::Cut,
                Meaning::Mountain | Meaning::Valley => Self::Crease,
                Meaning::Glue | Meaning::GlueBehind => Self::Glue,
                Meaning::Dimension | Meaning::Now => Self::Measures,
                Meaning::Cross | Meaning::Mat => Self::Words,
            }),
        }
    }

    /// What the pages call it.
    #[must_use]
    pub const fn key(self) -> Name<'static> {
        Name(match self {
            Self::Cut => b"L0",
            Self::Crease => b"L1",
            Self::Glue => b"L2",
            Self::Measures => b"L3",
            Self::Words => b"L4",
        })
    }

    /// Writes what it says of itself.
    pub fn write(self, pdf: &mut Pdf, id: Ref) {
        let (name, group, kind) = self.names();
        let mut dict = pdf.indirect(id).dict();
        dict.pair(Name(b"Type"), Name(b"OCG")).pair(Name(b"Name"), TextStr(name));
        let mut says = dict.insert(Name(b"GTS_Metadata")).dict();
        says.pair(Name(b"GTS_ProcStepsGroup"), Name(group.as_bytes()));
        if let Some(kind) = kind {
            says.pair(Name(b"GTS_ProcStepsType"), Name(kind.as_bytes()));
        }
    }

    /// Writes which layers a file has, and in which order they are listed, into its catalogue.
    pub fn list(catalog: &mut Dict, ids: &[Ref]) {
        let mut all = catalog.insert(Name(b"OCProperties")).dict();
        all.insert(Name(b"OCGs")).array().items(ids);
        all.insert(Name(b"D")).dict().insert(Name(b"Order")).array().items(ids);
    }
}
