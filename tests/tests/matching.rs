//! Which coil where: against every choice there is, for few coils; against what must hold, for many;
//! and twelve nests that were pressed in 1900, `data/press-nests-1900.csv`, which says where from.

#![expect(clippy::cast_precision_loss, reason = "no bench here has 2⁵² coils")]

use approx::{abs_diff_eq, assert_abs_diff_eq};
use coilnest::frame::Place;
use coilnest::matching::{Coil, Matching, MatchingError, Role, matched, matched_with_progress};
use coilnest::quantity::unit::{millimeter, newton, pound_force};
use coilnest::quantity::{Force, Length};
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};

/// Random numbers, the same in every run.
struct Chance(TestRng);

impl Chance {
    fn new() -> Self {
        Self(TestRng::deterministic_rng(RngAlgorithm::ChaCha))
    }

    /// From 0 to below a number.
    fn below(&mut self, end: usize) -> usize {
        self.0.next_u32() as usize % end
    }

    /// From 0 to 1, evenly.
    fn even(&mut self) -> f64 {
        f64::from(self.0.next_u32()) / f64::from(u32::MAX)
    }

    fn shuffle<T>(&mut self, of: &mut [T]) {
        for last in (1..of.len()).rev() {
            of.swap(last, self.below(last + 1));
        }
    }
}

fn newtons(value: f64) -> Force {
    Force::new::<newton>(value)
}

fn place(along: f64, across: f64) -> Place {
    let mm = Length::new::<millimeter>;
    Place { along: mm(along), across: mm(across) }
}

fn role(coils: Vec<Coil>) -> Role {
    Role { name: "some".into(), coils, new: None }
}

/// A bench with anything on it: loads that are often equal, short coils, ties, coils in their seats.
fn any_bench(chance: &mut Chance) -> (Vec<Role>, Vec<Place>) {
    let nests = 1 + chance.below(4);
    let roles = 1 + chance.below(3);
    let coarse = chance.below(2) == 0;
    let most = if roles == 3 { 5 } else { 6 };
    let mut bench: Vec<Role> = (0..roles)
        .map(|number| {
            let count = (nests + chance.below(most + 1 - nests)).min(most);
            let middle = [9000.0, 4000.0, 1500.0][number];
            let coils = (0..count).map(|_| {
                let part = if coarse { chance.below(7) as f64 / 6.0 } else { chance.even() };
                let mut coil = Coil::new(newtons(middle * (0.9 + 0.2 * part)));
                coil.usable = chance.below(10) > 0;
                coil
            });
            role(coils.collect())
        })
        .collect();
    for number in 0..chance.below(3) {
        let (first, second) = (chance.below(roles), chance.below(roles));
        let with_third = roles == 3 && chance.below(3) == 0;
        let mut of = vec![first, second];
        of.extend(3_usize.checked_sub(first + second).filter(|third| with_third && *third < 3));
        of.sort_unstable();
        of.dedup();
        let free: Vec<Option<usize>> = of
            .iter()
            .map(|role| bench[*role].coils.iter().position(|coil| coil.tie.is_none()))
            .collect();
        if of.len() > 1 && free.iter().all(Option::is_some) {
            for (role, coil) in of.iter().zip(free) {
                bench[*role].coils[coil.unwrap()].tie = Some(number);
            }
        }
    }
    if chance.below(2) == 0 {
        for role in &mut bench {
            let mut seats: Vec<usize> = (0..nests).collect();
            chance.shuffle(&mut seats);
            for (coil, seat) in role.coils.iter_mut().zip(seats) {
                coil.stays = Some(seat);
            }
        }
    }
    let corner = |number: usize| {
        place(900.0 - 1800.0 * (number / 2) as f64, 500.0 - 1000.0 * (number % 2) as f64)
    };
    let square = chance.below(2) == 0;
    let seats = (0..nests).map(|number| {
        if square { corner(number) } else { place(chance.even() * 1e3, chance.even() * 1e3) }
    });
    let seats = seats.collect();
    (bench, seats)
}

/// Whether coils may be used together: none short, and every tie whole.
fn allowed(bench: &[Role], coils: &[usize]) -> bool {
    coils.iter().enumerate().all(|(role, coil)| {
        let coil = &bench[role].coils[*coil];
        let whole = |tie| {
            bench.iter().zip(coils).all(|(role, taken)| {
                let tied = role.coils.iter().position(|other| other.tie == Some(tie));
                tied.is_none_or(|tied| tied == *taken)
            })
        };
        coil.usable && coil.tie.is_none_or(whole)
    })
}

fn load(bench: &[Role], coils: &[usize]) -> f64 {
    bench.iter().zip(coils).map(|(role, coil)| role.coils[*coil].load.value).sum()
}

/// Lowers the best spread by every choice of so many more nests that share no coil.
fn choose(
    all: &[(f64, Vec<usize>)],
    taken: &mut Vec<usize>,
    from: usize,
    left: usize,
    best: &mut f64,
) {
    let loads = || taken.iter().map(|nest| all[*nest].0);
    let spread = loads().fold(f64::NEG_INFINITY, f64::max) - loads().fold(f64::INFINITY, f64::min);
    if spread > *best {
        return;
    }
    if left == 0 {
        *best = spread;
        return;
    }
    for next in from..all.len() {
        let apart = |nest: &usize| all[*nest].1.iter().zip(&all[next].1).all(|(a, b)| a != b);
        if taken.iter().all(apart) {
            taken.push(next);
            choose(all, taken, next + 1, left - 1, best);
            taken.pop();
        }
    }
}

/// The least spread, by trying every nest for every seat.
fn least(bench: &[Role], nests: usize) -> Option<f64> {
    let mut all: Vec<Vec<usize>> = vec![vec![]];
    for role in bench {
        let longer = |coils: &Vec<usize>| {
            let coils = coils.clone();
            (0..role.coils.len()).map(move |coil| [coils.clone(), vec![coil]].concat())
        };
        all = all.iter().flat_map(longer).collect();
    }
    all.retain(|coils| allowed(bench, coils));
    let all: Vec<(f64, Vec<usize>)> =
        all.into_iter().map(|coils| (load(bench, &coils), coils)).collect();
    let mut best = f64::INFINITY;
    choose(&all, &mut Vec::new(), 0, nests, &mut best);
    best.is_finite().then_some(best)
}

/// Across, along, twist: each sum about the middle of the seats, in N·mm, N·mm, N.
fn sums(seats: &[Place], loads: &[f64]) -> [f64; 3] {
    let mean = |of: &[f64]| of.iter().sum::<f64>() / of.len() as f64;
    let about = |of: Vec<f64>| -> Vec<f64> { of.iter().map(|x| x - mean(&of)).collect() };
    let mm = |of: fn(&Place) -> Length| {
        about(seats.iter().map(|at| of(at).get::<millimeter>()).collect())
    };
    let (x, y) = (mm(|at| at.along), mm(|at| at.across));
    let twist = about(x.iter().zip(&y).map(|(x, y)| x * y).collect());
    let most = twist.iter().fold(0.0_f64, |most, arm| most.max(arm.abs()));
    let twist: Vec<f64> =
        twist.iter().map(|arm| if most > 1e-6 { arm / most } else { 0.0 }).collect();
    let sum = |arms: &[f64]| arms.iter().zip(loads).map(|(arm, load)| arm * load).sum::<f64>();
    [sum(&y), sum(&x), sum(&twist)]
}

fn orders(count: usize) -> Vec<Vec<usize>> {
    let mut orders = vec![vec![]];
    for next in 0..count {
        let insert = |order: &Vec<usize>| {
            let order = order.clone();
            (0..=order.len()).map(move |at| {
                let mut order = order.clone();
                order.insert(at, next);
                order
            })
        };
        orders = orders.iter().flat_map(insert).collect();
    }
    orders
}

fn standing(bench: &[Role], coils: &[usize], seat: usize) -> usize {
    let each = bench.iter().zip(coils);
    each.filter(|(role, coil)| role.coils[**coil].stays == Some(seat)).count()
}

/// What any answer must be: each coil once, none short, ties whole, sums as they are said.
fn check(bench: &[Role], seats: &[Place], found: &Matching) {
    assert_eq!(found.nests.len(), seats.len());
    for (role, of) in bench.iter().enumerate() {
        let mut used: Vec<usize> = found.nests.iter().map(|nest| nest.coils[role]).collect();
        used.extend(&found.left_over[role]);
        used.sort_unstable();
        let count = used.len();
        used.dedup();
        assert_eq!(count, used.len(), "{found:?}");
        let free = of.coils.iter().filter(|coil| coil.usable && coil.tie.is_none()).count();
        assert!(count >= free, "{found:?}");
    }
    for nest in &found.nests {
        assert_eq!(nest.coils.len(), bench.len());
        assert!(allowed(bench, &nest.coils), "{found:?}");
        assert!(
            abs_diff_eq!(load(bench, &nest.coils), nest.load.value, epsilon = 1e-9),
            "{found:?}"
        );
    }
    let loads: Vec<f64> = found.nests.iter().map(|nest| nest.load.value).collect();
    let most = loads.iter().copied().fold(0.0, f64::max);
    let least = loads.iter().copied().fold(f64::INFINITY, f64::min);
    assert!(
        abs_diff_eq!(most - least, found.reach.spread.value, epsilon = 1e-12 * most),
        "{found:?}"
    );
    assert!(found.reach.bound <= found.reach.spread);
    let stay: usize =
        found.nests.iter().zip(0..).map(|(nest, seat)| standing(bench, &nest.coils, seat)).sum();
    assert_eq!(found.moved, bench.len() * seats.len() - stay);
    let [across, along, twist] = sums(seats, &loads);
    let total: f64 = loads.iter().sum();
    let scale = 1e-9 * 1e3;
    assert_abs_diff_eq!(found.balance.across.get::<millimeter>(), across / total, epsilon = scale);
    assert_abs_diff_eq!(found.balance.along.get::<millimeter>(), along / total, epsilon = scale);
    assert!(
        abs_diff_eq!(found.balance.twist.value, twist, epsilon = 1e-9 * total),
        "{twist}\n{found:?}\n{seats:?}"
    );
}

/// Across, then along, then twist, then moved coils, over every order of the nests that were chosen.
fn check_places(bench: &[Role], seats: &[Place], found: &Matching) {
    assert!(found.balance_exact);
    let total: f64 = found.nests.iter().map(|nest| nest.load.value).sum();
    let rank = |order: &[usize]| {
        let nests: Vec<_> = order.iter().map(|nest| &found.nests[*nest]).collect();
        let loads: Vec<f64> = nests.iter().map(|nest| nest.load.value).collect();
        let [across, along, twist] = sums(seats, &loads).map(f64::abs);
        let stay: usize =
            nests.iter().zip(0..).map(|(nest, seat)| standing(bench, &nest.coils, seat)).sum();
        [across, along, twist, -(stay as f64)]
    };
    let mut ranks: Vec<[f64; 4]> = orders(seats.len()).iter().map(|order| rank(order)).collect();
    let ours = rank(&(0..seats.len()).collect::<Vec<_>>());
    let same = [1e-9 * total * 1e3, 1e-9 * total * 1e3, 1e-9 * total, 0.1];
    for part in 0..4 {
        let best = ranks.iter().map(|rank| rank[part]).fold(f64::INFINITY, f64::min);
        assert!(ours[part] <= best + same[part], "part {part}: {ours:?}, {best}\n{found:?}");
        ranks.retain(|rank| rank[part] <= best + same[part]);
    }
}

const BENCHES: usize = 20_000;

#[test]
fn no_other_choice_or_place_is_better() {
    let mut chance = Chance::new();
    let (mut solved, mut refused, mut tied, mut by_roles) = (0, 0, 0, [0; 3]);
    for _ in 0..BENCHES {
        let (bench, seats) = any_bench(&mut chance);
        let expected = least(&bench, seats.len());
        match (matched(&bench, &seats), expected) {
            (Ok(found), Some(expected)) => {
                check(&bench, &seats, &found);
                check_places(&bench, &seats, &found);
                let most = found.nests.iter().map(|nest| nest.load.value).fold(0.0, f64::max);
                let off = (found.reach.spread.value - expected).abs();
                assert!(off <= 1e-12 * most, "{off}: {expected}\n{found:?}\n{bench:?}");
                assert!(found.reach.exact(), "{found:?}");
                solved += 1;
                by_roles[bench.len() - 1] += 1;
                let is_tied = |coil: &Coil| coil.tie.is_some();
                let used = found.nests.iter().any(|nest| {
                    bench.iter().zip(&nest.coils).any(|(role, coil)| is_tied(&role.coils[*coil]))
                });
                tied += usize::from(used);
            }
            (Err(MatchingError::Lacking { lacks, wanted }), None) => {
                for lack in lacks {
                    assert_eq!(lack.usable + lack.missing, wanted);
                    let coils = bench[lack.role].coils.len();
                    assert_eq!(lack.usable + lack.left_out, coils);
                }
                refused += 1;
            }
            (Err(MatchingError::Tied { found, wanted }), None) => {
                assert!(found < wanted);
                assert_eq!(least(&bench, found + 1), None);
                assert!(found == 0 || least(&bench, found).is_some());
                refused += 1;
            }
            (found, expected) => panic!("{found:?}\n{expected:?}\n{bench:?}"),
        }
    }
    // Of each kind there are many.
    assert!(solved > BENCHES / 3 && refused > BENCHES / 20 && tied > BENCHES / 20);
    assert!(by_roles.iter().all(|count| *count > BENCHES / 20), "{by_roles:?}");
}

/// Ties of two roles each, which can go together or spoil it for each other.
#[test]
fn four_roles_with_ties_that_compete() {
    let mut chance = Chance::new();
    let mut tied = 0;
    for _ in 0..BENCHES / 50 {
        let mut bench: Vec<Role> = (0..4)
            .map(|_| {
                role((0..3).map(|_| Coil::new(newtons(1e3 + 100.0 * chance.even()))).collect())
            })
            .collect();
        for (number, of) in [[0, 1], [2, 3], [1, 2]].into_iter().enumerate() {
            for role in of {
                let coil = (number + role) % 3;
                if bench[role].coils[coil].tie.is_none() {
                    bench[role].coils[coil].tie = Some(number);
                }
            }
        }
        let seats = [place(0.0, 500.0), place(0.0, -500.0), place(900.0, 0.0)];
        let seats = &seats[..2 + chance.below(2)];
        match (matched(&bench, seats), least(&bench, seats.len())) {
            (Ok(found), Some(expected)) => {
                check(&bench, seats, &found);
                assert_abs_diff_eq!(found.reach.spread.value, expected, epsilon = 1e-12 * 5e3);
                assert!(found.reach.exact());
            }
            (Err(MatchingError::Tied { .. }), None) => tied += 1,
            (found, expected) => panic!("{found:?}\n{expected:?}\n{bench:?}"),
        }
    }
    assert!(tied < BENCHES / 50);
}

/// Coils about a mean, by the sum of four even numbers.
fn pool(chance: &mut Chance, count: usize, mean: f64, width: f64) -> Vec<Coil> {
    let mut coil = || {
        let off: f64 = (0..4).map(|_| chance.even()).sum::<f64>() / 2.0 - 1.0;
        Coil::new(newtons(mean + width * off))
    };
    (0..count).map(|_| coil()).collect()
}

fn seats(count: usize) -> Vec<Place> {
    let seat = |number| {
        let (pair, side) = ((number / 2) as f64, (number % 2) as f64);
        place(900.0 * (pair - (count / 2) as f64 / 2.0) / count as f64, 1000.0 * side - 500.0)
    };
    (0..count).map(seat).collect()
}

#[test]
fn more_coils_are_never_worse_and_order_is_nothing() {
    let mut chance = Chance::new();
    for round in 0..BENCHES / 50 {
        let roles = 1 + round % 3;
        let nests = 2 + chance.below(if roles == 3 { 3 } else { 9 });
        let mut bench: Vec<Role> = (0..roles)
            .map(|_| {
                let count = nests + chance.below(if roles == 3 { 4 } else { 12 });
                let mut role = role(pool(&mut chance, count, 8e3, 400.0));
                role.new = Some(newtons(8e3));
                role
            })
            .collect();
        let at = seats(nests);
        let found = matched(&bench, &at).unwrap();
        check(&bench, &at, &found);
        assert!(found.reach.exact(), "{found:?}");

        // What a new coil would do is what it does.
        for (number, with_new) in found.with_new.iter().enumerate() {
            let with_new = with_new.unwrap();
            let mut more = bench.clone();
            more[number].coils.push(Coil::new(newtons(8e3)));
            let then = matched(&more, &at).unwrap();
            assert!(then.reach.spread <= found.reach.spread * (1.0 + 1e-12));
            assert!((then.reach.spread - with_new.spread).value.abs() <= 1e-12 * 3e4);
            assert!(with_new.exact());
        }
        for role in &mut bench {
            chance.shuffle(&mut role.coils);
        }
        let shuffled = matched(&bench, &at).unwrap();
        assert!((shuffled.reach.spread - found.reach.spread).value.abs() <= 1e-12 * 3e4);

        // Seats seen in a mirror.
        let mirror = |at: &Place| Place { across: -at.across, ..*at };
        let mirrored = matched(&bench, &at.iter().map(mirror).collect::<Vec<_>>()).unwrap();
        let [ours, theirs] = [&shuffled, &mirrored].map(|found| found.balance);
        let off = (ours.across.abs() - theirs.across.abs()).get::<millimeter>();
        assert!(off.abs() <= 1e-9, "{ours:?} {theirs:?}");
        assert!((ours.along.abs() - theirs.along.abs()).get::<millimeter>().abs() <= 1e-9);
    }
}

/// Of as many coils as nests the least spread is that of the longest with the shortest: any other
/// order has a greater greatest and a lesser least.
#[test]
fn all_of_the_coils_go_long_with_short() {
    let mut chance = Chance::new();
    for nests in [2, 9, 100, 3000] {
        let bench = [5e3, 3e3].map(|mean| role(pool(&mut chance, nests, mean, 500.0)));
        let sorted = |role: &Role| {
            let mut loads: Vec<f64> = role.coils.iter().map(|coil| coil.load.value).collect();
            loads.sort_by(f64::total_cmp);
            loads
        };
        let (long, mut short) = (sorted(&bench[0]), sorted(&bench[1]));
        short.reverse();
        let sums: Vec<f64> = long.iter().zip(&short).map(|(a, b)| a + b).collect();
        let most = sums.iter().copied().fold(0.0, f64::max);
        let expected = most - sums.iter().copied().fold(f64::INFINITY, f64::min);
        let at = seats(nests);
        let found = matched(&bench, &at).unwrap();
        check(&bench, &at, &found);
        assert!(
            abs_diff_eq!(found.reach.spread.value, expected, epsilon = 1e-12 * most),
            "{nests}"
        );
        assert!(found.reach.exact(), "{nests}");
    }
}

/// Whatever was not proven is bounded, and the bound holds against a better choice put there on
/// purpose: nests of one load exactly, hidden among others.
#[test]
fn hidden_equals_are_not_excluded() {
    let mut chance = Chance::new();
    for (nests, others, roles) in
        [(40, 100, 2), (300, 700, 2), (6, 10, 3), (40, 100, 3), (20, 30, 4)]
    {
        let mut bench: Vec<Role> =
            (0..roles).map(|_| role(pool(&mut chance, others, 5e3, 300.0))).collect();
        for _ in 0..nests {
            let mut rest = 5e3 * f64::from(roles);
            for role in &mut bench[1..] {
                let load = 5e3 + 8.0 * chance.below(64) as f64 - 256.0;
                role.coils.push(Coil::new(newtons(load)));
                rest -= load;
            }
            bench[0].coils.push(Coil::new(newtons(rest)));
        }
        let at = seats(nests);
        let found = matched(&bench, &at).unwrap();
        check(&bench, &at, &found);
        assert!(found.reach.bound.value <= 0.0, "{:?}", found.reach);
        if roles == 2 {
            assert!(found.reach.spread.value <= 1e-12 * 2e4, "{:?}", found.reach);
        }
    }
}

#[test]
fn thousands_have_a_gap_below_a_hundred_thousandth_of_the_load() {
    let mut chance = Chance::new();
    let bench = [9e3, 4e3].map(|mean| role(pool(&mut chance, 2000, mean, mean / 20.0)));
    let at = seats(1000);
    let found = matched(&bench, &at).unwrap();
    check(&bench, &at, &found);
    let gap = (found.reach.spread - found.reach.bound).value;
    assert!(gap <= 1e-5 * 13e3, "{:?}", found.reach);
    // Far from the best, the gap would be of no use.
    assert!(found.reach.spread.value <= 1e-3 * 13e3, "{:?}", found.reach);
}

/// The loads at 12.25 in of the nests of 1900, lb, with their numbers. Each nest is one whole here.
fn pressed() -> Vec<(u32, f64)> {
    let text = include_str!("../data/press-nests-1900.csv");
    let rows = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    let field = |row: &str, at: usize| row.split(',').nth(at).unwrap().to_owned();
    rows.map(|row| (field(row, 0).parse().unwrap(), field(row, 1).parse().unwrap())).collect()
}

/// By hand from the printed table. Sorted: 15 080 (17), 15 780 (9), 16 520 (15), 16 700 (14), 17 560
/// (10), 17 700 (8, 16), 18 000 (19), 18 100 (12), 18 400 (18), 18 500 (20), 19 740 (13).
///
/// Four in a row: 17 700 to 18 100 (8, 16, 19, 12) differ by 400, 17 560 to 18 000 by 440, 18 000 to
/// 18 500 by 500, any other by 700 or more.
/// Eight in a row: 16 520 to 18 400 differs by 1880, 16 700 to 18 500 by 1800, any other by more.
#[test]
fn twelve_nests_of_1900() {
    let table = pressed();
    assert_eq!(table.len(), 12);
    let pounds = Force::new::<pound_force>;
    let bench = [role(table.iter().map(|(_, load)| Coil::new(pounds(*load))).collect())];
    let corners =
        [place(900.0, 500.0), place(900.0, -500.0), place(-900.0, 500.0), place(-900.0, -500.0)];
    let of = |found: &Matching| {
        let mut numbers: Vec<u32> = found.nests.iter().map(|nest| table[nest.coils[0]].0).collect();
        numbers.sort_unstable();
        numbers
    };

    let four = matched(&bench, &corners).unwrap();
    assert_eq!(of(&four), [8, 12, 16, 19]);
    assert_abs_diff_eq!(four.reach.spread.get::<pound_force>(), 400.0, epsilon = 1e-8);
    // 35 800 (17 700 + 18 100) on one side and 35 700 at the other is the most even split there is,
    // across as along. Both are had with the two lightest on one diagonal: 36 100 less 35 400.
    let total = 71_500.0;
    assert_abs_diff_eq!(
        four.balance.across.get::<millimeter>().abs(),
        500.0 * 100.0 / total,
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(
        four.balance.along.get::<millimeter>().abs(),
        900.0 * 100.0 / total,
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(four.balance.twist.get::<pound_force>().abs(), 700.0, epsilon = 1e-8);

    let eight: Vec<Place> = [1500.0, 900.0, -900.0, -1500.0]
        .iter()
        .flat_map(|x| [place(*x, 500.0), place(*x, -500.0)])
        .collect();
    let eight = matched(&bench, &eight).unwrap();
    assert_eq!(of(&eight), [8, 10, 12, 14, 16, 18, 19, 20]);
    assert_abs_diff_eq!(eight.reach.spread.get::<pound_force>(), 1800.0, epsilon = 1e-8);
    // 142 660 lb in all. All but number 10 are whole hundreds, so its side ends in 60 and the other in
    // 00; nearest to half are 71 360 and 71 300 = 16 700 + 18 000 + 18 100 + 18 500.
    let across = eight.balance.across.get::<millimeter>().abs();
    assert!(abs_diff_eq!(across, 500.0 * 60.0 / 142_660.0, epsilon = 1e-9), "{across}");
    assert!(four.balance_exact && eight.balance_exact);
}

#[test]
fn what_is_wrong_is_said_in_words() {
    let two = |loads: [f64; 2]| role(loads.map(|load| Coil::new(newtons(load))).to_vec());
    let seat = |across| place(0.0, across);
    let said = |bench: &[Role], seats: &[Place]| matched(bench, seats).unwrap_err().to_string();
    let at = [seat(500.0), seat(-500.0)];
    assert!(said(&[], &at).starts_with("0 roles in a nest; a number from 1 to 4 was expected"));
    assert!(
        said(&[two([1e3, 1e3])], &[]).starts_with("0 nests to be filled; a number from 1 to 5000")
    );
    assert!(said(&[two([1e3, f64::NAN])], &at).starts_with("some coil 2: "));
    assert!(
        said(&[two([1e3, -1.0])], &at)
            .starts_with("some coil 2: −1 N at the common height; a load of zero or more")
    );
    let far = [seat(500.0), seat(f64::INFINITY)];
    assert!(said(&[two([1e3, 1e3])], &far).starts_with("nest 2: its place"));

    let mut bench = [two([1e3, 1e3]), two([5e2, 6e2])];
    bench[0].new = Some(newtons(f64::INFINITY));
    assert!(said(&bench, &at).starts_with("a new some coil: "));
    bench[0].new = None;
    bench[0].coils[1].usable = false;
    let lacking = said(&bench, &at);
    assert_eq!(
        lacking,
        "some coils that can be used: 1, with 1 left out as not fit for use, or as the mate of such a coil, and 1 missing; 2 of each was expected: bring those that are missing"
    );
    bench[0].coils[1].usable = true;
    bench[1].coils[0].tie = Some(7);
    assert!(
        said(&bench, &at)
            .starts_with("some coil 1 is marked as one of a pair, but its mate is not there")
    );
    bench[1].coils[1].tie = Some(7);
    assert!(said(&bench, &at).starts_with("some coils 1 and 2 are marked as one pair"));
    bench[1].coils[1].tie = None;
    bench[1].coils[0].tie = None;
    bench[1].coils[0].stays = Some(2);
    assert!(
        said(&bench, &at).starts_with("some coil 1 is said to stand in nest 3; a nest from 1 to 2")
    );
    for coil in &mut bench[1].coils {
        coil.stays = Some(1);
    }
    assert!(said(&bench, &at).starts_with("some coils 1 and 2 are both said to stand in nest 2"));
}

/// Coils that are as good as any other choice stay where they are, and what was is reported.
#[test]
fn what_is_best_already_stays() {
    let stay = |loads: [f64; 3], seats: [Option<usize>; 3]| {
        let coils = loads.into_iter().zip(seats);
        role(coils.map(|(load, stays)| Coil { stays, ..Coil::new(newtons(load)) }).collect())
    };
    let seats = [place(0.0, 500.0), place(0.0, -500.0)];
    let now = [Some(0), Some(1), None];
    let equal = [stay([5e3; 3], now), stay([3e3; 3], now)];
    let found = matched(&equal, &seats).unwrap();
    assert_eq!(found.moved, 0);
    assert_eq!(found.before.unwrap().spread(), newtons(0.0));

    let uneven = [stay([5e3, 5.2e3, 5.1e3], now), stay([3e3, 3.1e3, 2.9e3], now)];
    let found = matched(&uneven, &seats).unwrap();
    let before = found.before.unwrap();
    assert_abs_diff_eq!(before.spread().value, 300.0, epsilon = 1e-9);
    // 500 mm · 300 N over 16 300 N, towards the second seat.
    assert!((before.balance.across.get::<millimeter>() + 500.0 * 300.0 / 16_300.0).abs() < 1e-9);
    assert!(found.reach.spread.value < 1e-9, "{found:?}");
}

/// A listener is told more and more, up to the whole at most, and changes nothing: of nests of one coil, two and three.
#[test]
fn how_far_a_search_is_rises_and_changes_nothing() {
    let mut random = oorandom::Rand64::new(7);
    for roles in 1..=3_u64 {
        let roles: Vec<Role> = (0..roles)
            .map(|_| {
                let loads = (0..30).map(|_| newtons(8e3 + 900.0 * random.rand_float()));
                role(loads.map(Coil::new).collect())
            })
            .collect();
        let seats: Vec<Place> = (0..6).map(|seat| place(0.0, 300.0 * f64::from(seat))).collect();
        let mut told = Vec::new();
        let found = matched_with_progress(&roles, &seats, &mut |part| told.push(part)).unwrap();
        assert_eq!(found, matched(&roles, &seats).unwrap());
        assert!(told.len() > 3, "{} roles: {told:?}", roles.len());
        assert!(told.windows(2).all(|two| two[0] < two[1]), "{told:?}");
        assert!(told.iter().all(|part| *part > 0.0 && *part <= 1.0), "{told:?}");
    }
}
