//! Plain text tables: columns as wide as their widest cell, two spaces between them.

use std::fmt;

#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Align {
    Left,
    Right,
}

#[derive(Debug)]
pub(crate) struct Table {
    aligns: Vec<Align>,
    rows: Vec<Vec<String>>,
}

impl Table {
    pub(crate) fn new<const N: usize>(columns: [(&str, Align); N]) -> Self {
        Self {
            aligns: columns.iter().map(|(_, align)| *align).collect(),
            rows: vec![columns.iter().map(|(name, _)| (*name).to_owned()).collect()],
        }
    }

    pub(crate) fn row(&mut self, cells: impl IntoIterator<Item = String>) {
        self.rows.push(cells.into_iter().collect());
    }

    fn width(&self, column: usize) -> usize {
        let cells = self.rows.iter().filter_map(|row| row.get(column));
        cells.map(|cell| cell.chars().count()).max().unwrap_or(0)
    }
}

impl fmt::Display for Table {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let widths: Vec<usize> = (0..self.aligns.len()).map(|column| self.width(column)).collect();
        let lines = self.rows.iter().map(|row| {
            let cells = row.iter().zip(&self.aligns).zip(&widths);
            let padded = cells.map(|((cell, align), &width)| match align {
                Align::Left => format!("{cell:<width$}"),
                Align::Right => format!("{cell:>width$}"),
            });
            padded.collect::<Vec<_>>().join("  ").trim_end().to_owned()
        });
        f.write_str(&lines.collect::<Vec<_>>().join("\n"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_line_up() {
        let mut table = Table::new([("step", Align::Left), ("time", Align::Right)]);
        table.row(["tidy".to_owned(), "1 s".to_owned()]);
        table.row(["page tests".to_owned(), "120 s".to_owned()]);
        assert_eq!(table.to_string(), "step         time\ntidy          1 s\npage tests  120 s");
    }
}
