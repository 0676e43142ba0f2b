//! Sorting by code that stands once. The standard library writes its sort out anew for each kind of item, which
//! makes a tenth of a page's engine; for lists that are long, and sorted over and over, it is the quicker one.

use core::cmp::Ordering;

/// What can be put in order.
pub(crate) trait InOrder<T> {
    /// Sorts the items; of two that are alike the first stays the first.
    fn put_in_order(&mut self, compare: impl Fn(&T, &T) -> Ordering);

    /// The same of a list of few, sorted over and over.
    fn put_few_in_order(&mut self, compare: impl Fn(&T, &T) -> Ordering);
}

impl<T> InOrder<T> for [T] {
    fn put_in_order(&mut self, compare: impl Fn(&T, &T) -> Ordering) {
        let order = order(self.len(), &|one, other| match (self.get(one), self.get(other)) {
            (Some(one), Some(other)) => compare(one, other),
            _ => Ordering::Equal,
        });
        arrange(&order, &mut |one, other| self.swap(one, other));
    }

    fn put_few_in_order(&mut self, compare: impl Fn(&T, &T) -> Ordering) {
        for count in 2..=self.len() {
            // All but the last of so many stand in order.
            for last in (1..count).rev() {
                match self.get(last - 1).zip(self.get(last)) {
                    Some((one, other)) if compare(one, other).is_gt() => self.swap(last - 1, last),
                    _ => break,
                }
            }
        }
    }
}

/// Where the item of each place stands now.
fn order(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|one, other| compare(*one, *other));
    order
}

/// Brings the item of each place there.
fn arrange(order: &[usize], swap: &mut dyn FnMut(usize, usize)) {
    for (place, from) in order.iter().enumerate() {
        let mut from = *from;
        // What stood at a place that is done went to where the item of that place came from.
        while from < place {
            from = order.get(from).copied().unwrap_or(place);
        }
        swap(place, from);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn any_list_comes_out_as_the_standard_library_sorts_it() {
        for count in 0..=6_u32 {
            for number in 0..3_usize.pow(count) {
                let keys = (0..count).map(|digit| number / 3_usize.pow(digit) % 3);
                let mut list: Vec<(usize, usize)> =
                    keys.enumerate().map(|(place, key)| (key, place)).collect();
                let mut expected = list.clone();
                expected.sort_by_key(|(key, _)| *key);
                let mut few = list.clone();
                list.put_in_order(|(one, _), (other, _)| one.cmp(other));
                few.put_few_in_order(|(one, _), (other, _)| one.cmp(other));
                assert_eq!((&list, &few), (&expected, &expected));
            }
        }
    }
}
