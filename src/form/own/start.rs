//! What a new form begins with: a shallow open tray with a tab at each corner, ours.

/// As its maker would write it down.
pub const START: &str = "\
called My form
size width = 4 in
size depth = 3 in
size height = 1 in
size tab = 1/2 in
columns height, width, height
rows height, depth, height
empty
A1 a tab; strip top: height - tab; wedge top left: 1/16 in × tab; wedge top right: 1/16 in × tab
B1 front
C1 a tab; strip top: height - tab; wedge top left: 1/16 in × tab; wedge top right: 1/16 in × tab
A2 left side
B2 base
C2 right side
A3 a tab; strip bottom: height - tab; wedge bottom left: 1/16 in × tab; wedge bottom right: 1/16 in × tab
B3 back
C3 a tab; strip bottom: height - tab; wedge bottom left: 1/16 in × tab; wedge bottom right: 1/16 in × tab
cut A1|B1
cut B1|C1
cut A3|B3
cut B3|C3
glue A1 to B1
glue C1 to B1
glue A3 to B3
glue C3 to B3
";
