//! The one painter of SVG, and the one escape for what goes into it.

use super::drawing::{Area, Drawing, Ends, Fill, Hold, Ink, Label, Line, Mark, Reads, Spot};
use super::font::Font;
use super::lettering::{Piece, STACKED, pieces};
use super::number::num;
use super::style::{FINE, PIXEL};

/// What is painted for.
#[derive(Clone, Copy)]
enum Target<'a> {
    /// The page, which gives colours by its classes.
    Screen,
    /// Paper and machines: black lines, and sizes in millimetres.
    Paper,
    /// A page to be read, as it comes out of the printer, set in this font.
    Page(&'a Font),
}

/// Paints a page to be read as it comes out of the printer, whatever the scheme of the screen; `font` is what it was set
/// in.
#[must_use]
pub fn page(drawing: &Drawing, font: &Font) -> String {
    painted(drawing, Target::Page(font))
}

/// Paints a drawing for the screen: the lines keep their strength and dashes at every size.
///
/// Colours that belong to the page are classes, so that its schemes can set them; nothing is an inline style.
#[must_use]
pub fn paint(drawing: &Drawing) -> String {
    painted(drawing, Target::Screen)
}

/// Paints the lines and words of a drawing at true scale, as a file of its own: a unit is a millimetre.
///
/// ```
/// use snugfold::draw::{drawing::Drawing, svg::true_scale};
/// let card = Drawing { max: [228.6, 190.5], ..Drawing::default() };
/// let file = true_scale(&card);
/// assert!(file.contains("width=\"228.6mm\" height=\"190.5mm\"") && file.contains("viewBox=\"0 0 228.6 190.5\""));
/// ```
#[must_use]
pub fn true_scale(drawing: &Drawing) -> String {
    painted(drawing, Target::Paper)
}

fn painted(drawing: &Drawing, target: Target) -> String {
    let [w, h] = [0, 1].map(|i| num((drawing.max[i] - drawing.min[i]).max(1.0)));
    let look = match target {
        Target::Screen => "class=\"drawing\"".to_owned(),
        Target::Page(_) => "class=\"drawing paper-page\"".to_owned(),
        Target::Paper => format!("width=\"{w}mm\" height=\"{h}mm\" font-family=\"sans-serif\""),
    };
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" {look} viewBox=\"{} {} {w} {h}\" role=\"img\" aria-label=\"{}\">",
        num(drawing.min[0]),
        num(drawing.min[1]),
        escape(&drawing.title)
    );
    // Alike areas or lines one after another are one shape: between two areas that touch no light shows.
    let mut begun: Option<String> = None;
    for (nth, mark) in drawing.marks.iter().enumerate() {
        match mark {
            // Paper has its own colour.
            Mark::Area(_) if matches!(target, Target::Paper) => {}
            Mark::Area(area) => {
                let run = path(&area.corners, Ends::Closed);
                let so_far = begun.take().unwrap_or_default() + &run;
                if drawing.marks.get(nth + 1).is_some_and(|next| area.goes_on(next)) {
                    begun = Some(so_far);
                } else {
                    paint_area(&mut out, area, &so_far, target);
                }
            }
            Mark::Line(line) => {
                let so_far = begun.take().unwrap_or_default() + &path(&line.run, line.ends);
                // In a file each line is a thing of its own; a screen has less to do with one for all that look alike.
                if !matches!(target, Target::Paper) && drawing.marks.get(nth + 1).is_some_and(|next| line.goes_on(next))
                {
                    begun = Some(so_far);
                } else {
                    paint_line(&mut out, line, &so_far, target);
                }
            }
            Mark::Label(label) => paint_label(&mut out, label, drawing.lettering, target),
        }
    }
    out.push_str("</svg>");
    out
}

/// Text as it may stand in SVG and in its attributes: no markup, and no characters that XML forbids.
///
/// ```
/// use snugfold::draw::svg::escape;
/// assert_eq!(escape("<b> & \"c\"\u{0}"), "&lt;b&gt; &amp; &quot;c&quot;");
/// ```
#[must_use]
pub fn escape(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&#39;"),
            '\t' | '\n' | '\r' => safe.push(' '),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {}
            c => safe.push(c),
        }
    }
    safe
}

fn path(run: &[Spot], ends: Ends) -> String {
    let mut d = String::new();
    for (i, p) in run.iter().enumerate() {
        d.push(if i == 0 { 'M' } else { 'L' });
        d.push_str(&num(p[0]));
        d.push(' ');
        d.push_str(&num(p[1]));
    }
    if ends == Ends::Closed {
        d.push('Z');
    }
    d
}

fn paint_area(out: &mut String, area: &Area, run: &str, target: Target) {
    let fill = match area.fill {
        fill if matches!(target, Target::Page(_)) => format!("fill=\"{}\"", fill.on_paper().hex()),
        Fill::Card(tint, light) => format!("class=\"card\" fill=\"{}\"", tint.lit(light).hex()),
        Fill::Waste => "class=\"waste\"".to_owned(),
        Fill::Sheet => "class=\"sheet\"".to_owned(),
        Fill::Chosen => "class=\"chosen\"".to_owned(),
        Fill::Tool => "class=\"tool\"".to_owned(),
    };
    let touch = area.panel.map_or(String::new(), |t| format!(" data-part=\"{}\" data-panel=\"{}\"", t.part, t.panel));
    out.push_str(&format!("<path {fill}{touch} d=\"{run}\"/>"));
}

const fn ink_class(ink: Ink) -> &'static str {
    match ink {
        Ink::Page => "on-page",
        Ink::Card(_) => "on-card",
    }
}

fn ink_of(ink: Ink) -> &'static str {
    match ink {
        Ink::Card(tint) if !tint.is_light() => "on-dark-card",
        ink => ink_class(ink),
    }
}

fn paint_line(out: &mut String, line: &Line, run: &str, target: Target) {
    let style = line.meaning.style();
    let (look, unit) = match target {
        Target::Screen => (format!("class=\"{} {}\"", style.class, ink_of(line.ink)), 1.0),
        Target::Page(_) => (format!("stroke=\"{}\"", line.ink.on_paper().hex()), PIXEL * FINE),
        Target::Paper => (format!("data-line=\"{}\" stroke=\"#000\"", style.class), PIXEL),
    };
    let mut dashes = String::new();
    if !style.dashes.is_empty() {
        let each: Vec<String> = style.dashes.iter().map(|d| num(d * unit)).collect();
        dashes = format!(" stroke-dasharray=\"{}\"", each.join(" "));
    }
    // On the screen lines keep their strength at every size.
    let held = if matches!(target, Target::Screen) { " vector-effect=\"non-scaling-stroke\"" } else { "" };
    out.push_str(&format!(
        "<path {look} fill=\"none\" stroke-width=\"{}\"{dashes}{held} d=\"{run}\"/>",
        num(style.width * unit)
    ));
}

fn paint_label(out: &mut String, label: &Label, lettering: f64, target: Target) {
    let size = lettering * label.size;
    let pieces = pieces(&label.words);
    // On a page the lines are set already.
    let set = if let Target::Page(font) = target { Some(font) } else { None };
    let wide = |piece: &Piece| set.map_or_else(|| piece.width(), |font| piece.width_in(font)) * size;
    let width: f64 = pieces.iter().map(wide).sum();
    let (look, bar) = match target {
        Target::Screen => {
            let ink = ink_of(label.ink);
            (format!("class=\"{ink}\""), format!("class=\"bar {ink}\""))
        }
        Target::Page(_) => {
            let ink = label.ink.on_paper().hex();
            (format!("fill=\"{ink}\""), format!("stroke=\"{ink}\""))
        }
        Target::Paper => ("fill=\"#000\"".to_owned(), "stroke=\"#000\"".to_owned()),
    };
    let anchor = match label.hold {
        Hold::Start => "start",
        Hold::Middle => "middle",
        Hold::End => "end",
    };
    let turn = match label.way {
        Reads::Across => String::new(),
        Reads::Up => format!(" transform=\"rotate(-90 {} {})\"", num(label.at[0]), num(label.at[1])),
    };
    // Figures of system faces are about 0.72 of the size high: their middle is 0.36 above the foot.
    let high = set.map_or(0.72, |font| font.capital);
    let foot = |middle: f64, size: f64| num(middle + high / 2.0 * size);
    let text = |out: &mut String, x: f64, y: f64, size: f64, anchor: &str, turn: &str, words: &str| {
        out.push_str(&format!(
            "<text {look} x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{anchor}\"{turn}>{}</text>",
            num(x),
            foot(y, size),
            num(size),
            escape(words)
        ));
    };
    let held = |wide: f64| format!(" textLength=\"{}\" lengthAdjust=\"spacingAndGlyphs\"", num(wide));
    if let [Piece::Run(words)] = pieces.as_slice() {
        let more = if set.is_some_and(|font| font.shows(words)) && width > 0.0 { held(width) } else { String::new() };
        text(out, label.at[0], label.at[1], size, anchor, &format!("{more}{turn}"), words);
        return;
    }
    out.push_str(&format!("<g{turn}>"));
    let mut x = label.at[0]
        - match label.hold {
            Hold::Start => 0.0,
            Hold::Middle => width / 2.0,
            Hold::End => width,
        };
    for piece in &pieces {
        let wide = wide(piece);
        match piece {
            Piece::Run(words) => {
                // Beside a fraction the place of each run counts: it is given the width that was reckoned with,
                // whatever the face; and spaces at its ends are kept.
                text(out, x, label.at[1], size, "start", &held(wide), &words.replace(' ', "\u{a0}"));
            }
            Piece::Stack(n, d) => {
                let (middle, small) = (x + wide / 2.0, size * STACKED);
                let away = small * 0.52;
                text(out, middle, label.at[1] - away, small, "middle", "", &n.to_string());
                text(out, middle, label.at[1] + away, small, "middle", "", &d.to_string());
                out.push_str(&format!(
                    "<path {bar} stroke-width=\"{}\" d=\"M{} {}H{}\"/>",
                    num(size * 0.06),
                    num(x + size * 0.05),
                    num(label.at[1]),
                    num(x + wide - size * 0.05)
                ));
            }
        }
        x += wide;
    }
    out.push_str("</g>");
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::drawing::Meaning;
    use crate::measure::{length::Length, show::Figure, system::System};
    use crate::project::request::Tint;

    fn check(drawing: &Drawing, expected: &[&str]) {
        let painted = paint(drawing);
        let lines: Vec<&str> = painted.split_inclusive('>').filter(|l| !l.starts_with("</")).collect();
        assert_eq!(lines, expected);
    }

    fn small() -> Drawing {
        Drawing { title: "T".into(), max: [10.0, 5.0], lettering: 2.0, ..Drawing::default() }
    }

    const HEAD: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" viewBox=\"0 0 10 5\" role=\"img\" aria-label=\"T\">";

    #[test]
    fn a_fold_and_its_card() {
        let mut d = small();
        let kraft = Tint::default();
        d.area(vec![[0.0, 0.0], [10.0, 0.0], [10.0, 5.0]], Fill::Card(kraft, 0.0));
        d.line(Meaning::Mountain, Ink::Card(kraft), vec![[0.0, 2.5], [10.0, 2.5]]);
        check(
            &d,
            &[
                HEAD,
                "<path class=\"card\" fill=\"#d8b98a\" d=\"M0 0L10 0L10 5Z\"/>",
                "<path class=\"mountain on-card\" fill=\"none\" stroke-width=\"1.4\" stroke-dasharray=\"9 3 1.5 3\" vector-effect=\"non-scaling-stroke\" d=\"M0 2.5L10 2.5\"/>",
            ],
        );
    }

    #[test]
    fn a_fraction_is_stacked() {
        let mut d = small();
        let at = Figure::of(Length::inches(5, 4), System::Inch);
        d.label([5.0, 2.0], crate::say::phrase::Phrase::bare(at), Ink::Page);
        let painted = paint(&d);
        for part in [">1</text>", ">4</text>", "font-size=\"1.32\"", "class=\"bar on-page\""] {
            assert!(painted.contains(part), "{part} in {painted}");
        }
    }

    #[test]
    fn names_never_become_markup() {
        let mut d = small();
        d.title = "\"><script>".into();
        d.label([0.0, 0.0], "</text><script>alert(1)</script>\u{1}", Ink::Page);
        let painted = paint(&d);
        assert!(!painted.contains("<script"), "{painted}");
        assert!(!painted.contains('\u{1}'));
    }
}
