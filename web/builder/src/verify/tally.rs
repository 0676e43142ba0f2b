//! How many checks passed and failed, read from what a test program printed.

use std::iter::Sum;

#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Tally {
    pub(crate) passed: usize,
    pub(crate) failed: usize,
    pub(crate) skipped: usize,
}

impl Tally {
    /// A step that is one check.
    pub(crate) fn of_one(passed: bool) -> Self {
        Self { passed: usize::from(passed), failed: usize::from(!passed), skipped: 0 }
    }

    /// What the lines `test result: ok. 12 passed; 0 failed; 1 ignored; ...` add up to.
    pub(crate) fn of_cargo_test(printed: &str) -> Self {
        printed
            .lines()
            .filter_map(|line| line.trim().strip_prefix("test result: ")?.split_once(". "))
            .flat_map(|(_, counts)| counts.split("; "))
            .map(Self::of_count)
            .sum()
    }

    /// What Playwright's closing lines (`12 passed (5.5s)`, `1 failed`, ...) add up to.
    pub(crate) fn of_playwright(printed: &str) -> Self {
        printed.lines().map(Self::of_count).sum()
    }

    /// One count, such as `12 passed`. A check that passed only when repeated, or was never reached, did not pass.
    fn of_count(text: &str) -> Self {
        let none = Self::default();
        let Some((number, word)) = text.trim().split_once(' ') else {
            return none;
        };
        let Ok(count) = number.parse() else {
            return none;
        };
        let word = word.split_once(" (").map_or(word, |(word, _time)| word);
        match word {
            "passed" => Self { passed: count, ..none },
            "failed" | "flaky" | "interrupted" | "did not run" => Self { failed: count, ..none },
            "ignored" | "skipped" => Self { skipped: count, ..none },
            _ => none,
        }
    }

    /// Brings the counts and the way the program ended together: one that ended badly, or that ran no test, failed.
    pub(crate) fn with_ending(self, ended_well: bool) -> Self {
        let ran_something = self.passed + self.failed > 0;
        if ended_well && ran_something {
            return self;
        }
        Self { failed: self.failed.max(1), ..self }
    }
}

impl Sum for Tally {
    fn sum<I: Iterator<Item = Self>>(tallies: I) -> Self {
        tallies.fold(Self::default(), |sum, tally| Self {
            passed: sum.passed + tally.passed,
            failed: sum.failed + tally.failed,
            skipped: sum.skipped + tally.skipped,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tally(passed: usize, failed: usize, skipped: usize) -> Tally {
        Tally { passed, failed, skipped }
    }

    #[test]
    fn cargo_test_lines_are_added_up() {
        let printed = "\
running 3 tests
test reading::tests::thirds ... ok
test result: ok. 3 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.00s
   Doc-tests coilnest
test result: FAILED. 4 passed; 2 failed; 1 ignored; 0 measured; 0 filtered out; finished in 1.20s
";
        assert_eq!(Tally::of_cargo_test(printed), tally(7, 2, 1));
    }

    #[test]
    fn other_lines_of_a_test_are_no_counts() {
        let printed =
            "40 passed\ntest counts::of_12 passed; 9 failed ... ok\nassertion: 3 failed\n";
        assert_eq!(Tally::of_cargo_test(printed), Tally::default());
    }

    #[test]
    fn playwright_lines_are_added_up() {
        let printed = "\
Running 9 tests using 1 worker
  ok 1 job.spec.ts:3:1 the first reading (1.2s)
  1 failed
    job.spec.ts:9:1 the second reading
  1 flaky
  2 did not run
  1 skipped
  4 passed (5.5s)
";
        assert_eq!(Tally::of_playwright(printed), tally(4, 4, 1));
        assert_eq!(Tally::of_playwright("  12 passed (1.0m)\n"), tally(12, 0, 0));
    }

    #[test]
    fn a_program_that_ran_nothing_or_ended_badly_failed() {
        assert_eq!(tally(3, 0, 0).with_ending(true), tally(3, 0, 0));
        assert_eq!(tally(3, 0, 0).with_ending(false), tally(3, 1, 0));
        assert_eq!(tally(3, 2, 0).with_ending(false), tally(3, 2, 0));
        assert_eq!(tally(0, 0, 5).with_ending(true), tally(0, 1, 5));
    }
}
