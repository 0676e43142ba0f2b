//! What the columns of a table of coils hold, and the line that says so.

use super::fields::{separator, split};
use crate::quantity::shorten;

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Column {
    Label,
    Role,
    Condition,
    Reading,
    LeftOut,
}

impl Column {
    /// The column that a word names, small or capital and whatever its blanks.
    fn named(word: &str) -> Option<Self> {
        let letters = word.chars().filter(|c| !c.is_whitespace()).flat_map(char::to_lowercase);
        match letters.collect::<String>().as_str() {
            "label" | "mark" => Some(Self::Label),
            "role" | "coil" | "drawing" => Some(Self::Role),
            "condition" => Some(Self::Condition),
            word => {
                let number = word.strip_prefix("reading")?;
                let number = number.strip_prefix('s').unwrap_or(number);
                number.chars().all(|c| c.is_ascii_digit()).then_some(Self::Reading)
            }
        }
    }
}

/// The columns of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Columns {
    /// The line that names them.
    pub(super) header: String,
    pub(super) separator: char,
    /// What a person should know of them.
    pub(super) remarks: Vec<String>,
    kinds: Vec<Column>,
}

impl Columns {
    /// Those that a line names; none where it names too little to be such a line.
    pub(super) fn named(header: &str) -> Option<Self> {
        let separator = separator(header);
        let (mut columns, mut remarks) = (Vec::new(), Vec::new());
        for (index, field) in split(header, separator).ok()?.iter().enumerate() {
            let named = Column::named(field);
            let goes_on = field.is_empty() && columns.last() == Some(&Column::Reading);
            let (column, why) = match named {
                Some(column) if column == Column::Reading || !columns.contains(&column) => {
                    (column, "")
                }
                Some(_) => (Column::LeftOut, "another stands before it"),
                None if goes_on => (Column::Reading, ""),
                None if field.is_empty() => (Column::LeftOut, "it has no name"),
                None => (Column::LeftOut, "it is none of label, role, condition and readings"),
            };
            if column == Column::LeftOut {
                let number = index + 1;
                let field = shorten(field);
                let name = if field.is_empty() { field } else { format!(", “{field}”,") };
                remarks.push(format!("Column {number}{name} is left out: {why}."));
            }
            columns.push(column);
        }
        let asked = [Column::Label, Column::Role, Column::Reading];
        let found = asked.iter().filter(|kind| columns.contains(kind)).count();
        (found > 1).then(|| Self { header: header.to_owned(), separator, remarks, kinds: columns })
    }

    /// Label, role and readings, in that order.
    pub(super) fn usual(separator: char) -> Self {
        let remark = "No line names the columns: they are taken as label, role, readings.";
        Self {
            header: format!("label{separator}role{separator}readings"),
            separator,
            remarks: vec![remark.to_owned()],
            kinds: vec![Column::Label, Column::Role, Column::Reading],
        }
    }

    /// What the field of an index holds; behind the last column more of its readings may stand.
    pub(super) fn at(&self, index: usize) -> Option<Column> {
        let last = self.kinds.last().filter(|last| **last == Column::Reading);
        self.kinds.get(index).or(last).copied()
    }

    /// Index of the first column of a kind.
    pub(super) fn of(&self, kind: Column) -> Option<usize> {
        self.kinds.iter().position(|column| *column == kind)
    }

    /// The column without which no coil can be read, if there is one.
    pub(super) fn lacks(&self) -> Option<&'static str> {
        match (self.of(Column::Label), self.of(Column::Reading)) {
            (None, _) => Some("label"),
            (_, None) => Some("readings"),
            _ => None,
        }
    }

    /// How many are named.
    pub(super) fn count(&self) -> usize {
        self.kinds.len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use Column::{Condition, Label, LeftOut, Reading, Role};

    #[test]
    fn words() {
        for (header, columns) in [
            ("label,role,readings", &[Label, Role, Reading][..]),
            (" Label ; ROLE ; Reading 1 ; reading2;;", &[Label, Role, Reading, Reading]),
            ("Readings\tCoil\tMark", &[Reading, Role, Label]),
            ("label,role,Condition,reading", &[Label, Role, Condition, Reading]),
            ("\"reading 1\",,drawing,notes,label", &[Reading, Reading, Role, LeftOut, Label]),
            (",label,label,reading 10", &[LeftOut, Label, LeftOut, Reading]),
            ("lable,role,reading", &[LeftOut, Role, Reading]),
        ] {
            let named = Columns::named(header).unwrap_or_else(|| panic!("{header}"));
            assert_eq!(named.kinds, columns, "{header}");
        }
        for header in ["", "label", "label;label", "17,coil,13 7/8", "a,b,c", "readings,reading a"]
        {
            assert_eq!(Columns::named(header), None, "{header}");
        }
    }

    #[test]
    fn the_usual_ones_are_named_by_their_header() {
        for separator in [',', ';', '\t'] {
            let usual = Columns::usual(separator);
            let named = Columns::named(&usual.header);
            assert_eq!(named, Some(Columns { remarks: Vec::new(), ..usual }));
        }
    }

    #[test]
    fn readings_may_go_on_behind_the_last_column() {
        let open = Columns::named("label,role,reading").unwrap();
        assert_eq!((open.at(2), open.at(9)), (Some(Reading), Some(Reading)));
        let closed = Columns::named("reading,label,role").unwrap();
        assert_eq!((closed.at(2), closed.at(3)), (Some(Role), None));
        assert_eq!((open.lacks(), closed.lacks()), (None, None));
        assert_eq!(Columns::named("role,reading").unwrap().lacks(), Some("label"));
        assert_eq!(Columns::named("role,label").unwrap().lacks(), Some("readings"));
    }
}
