//! How far a long search has come, for whoever waits for it.

/// Tells a listener how far a search has come, as a part from 0 to 1.
///
/// The part never falls, and is told again only once it has grown by a hundredth: a listener may take its time. It
/// says how much has been decided, which need not be how much time has gone.
pub(crate) struct Progress<'a> {
    tell: &'a mut dyn FnMut(f64),
    from: f64,
    to: f64,
    told: f64,
}

/// What a part has to grow by to be told again.
const STEP: f64 = 0.01;

impl<'a> Progress<'a> {
    pub(crate) fn new(tell: &'a mut dyn FnMut(f64)) -> Self {
        Self { tell, from: 0.0, to: 1.0, told: 0.0 }
    }

    /// That much of it is done.
    pub(crate) fn at(&mut self, part: f64) {
        let part = self.from + (self.to - self.from) * part.clamp(0.0, 1.0);
        if part >= self.told + STEP {
            self.told = part;
            (self.tell)(part);
        }
    }

    /// The progress of a piece of it, between two parts of the whole.
    pub(crate) fn piece(&mut self, from: f64, to: f64) -> Progress<'_> {
        let whole = self.to - self.from;
        let (from, to) = (self.from + whole * from, self.from + whole * to);
        Progress { tell: &mut *self.tell, from, to, told: self.told.max(from) }
    }
}

/// One of several as a part of them all.
#[expect(clippy::cast_precision_loss, reason = "a count, for a bar that is drawn")]
pub(crate) fn part(done: usize, of: usize) -> f64 {
    if of == 0 { 1.0 } else { done as f64 / of as f64 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_piece_is_told_as_a_part_of_the_whole_and_only_when_it_has_grown() {
        let mut told = Vec::new();
        let mut tell = |part| told.push(part);
        let mut progress = Progress::new(&mut tell);
        progress.at(0.004);
        progress.at(0.25);
        let mut half = progress.piece(0.5, 1.0);
        half.at(0.0);
        half.at(0.5);
        half.at(0.4);
        half.piece(0.9, 1.0).at(2.0);
        assert_eq!(told, [0.25, 0.75, 1.0]);
        assert!(
            (part(1, 4) - 0.25).abs() < f64::EPSILON && (part(0, 0) - 1.0).abs() < f64::EPSILON
        );
    }
}
