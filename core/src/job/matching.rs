//! Which coil of those on the bench and in the nests belongs in which seat.

use super::answer::answered;
use super::choices::Use;
use super::coil::Coil as Drawn;
use super::context::Context;
use super::drafted::{Bench, Drafted};
use super::figures::{Format, text};
use super::formulas::{BEYOND_BOUND, HEIGHT, LOAD_SPREAD, SUM_OF_LOADS};
use super::frame;
use super::input::Job;
use super::labels;
use super::nest::{ComputedNest, called};
use super::pool::{self, Lying};
use super::problem::Path;
use super::report::{Figure, MatchReport, MatchedNest, MatchedSeat, Problem, SeatReport, Word};
use super::seat::{self, CoilState, Location};
use super::stack;
use crate::formula::Value;
use crate::frame::Place;
use crate::matching::{Coil, Matching, MatchingError, Reach, Role, SOURCE, matched_with_progress};
use crate::order::InOrder;
use crate::quantity::{self, Force, Length, System, si};
use crate::say::Say;
use crate::tables::Tables;
use std::rc::Rc;

/// The coils on the bench with their verdicts, and which coil belongs in which seat.
///
/// Nests of one make-up are wanted: those of the frame, or all where there is none. Coils that are short,
/// long or scrap are set aside, and so are those that are too close to call unless the job says that they
/// may be used (`use_too_close`).
#[must_use]
pub fn matching(job: &Job, tables: &Tables<'_>) -> MatchReport {
    matching_with_progress(job, tables, &mut |_| {})
}

/// What [`matching`] gives, telling a listener from time to time how much is decided, a part from 0 to 1 that never
/// falls: of thousands of coils it takes a second.
#[must_use]
pub fn matching_with_progress(
    job: &Job,
    tables: &Tables<'_>,
    progress: &mut dyn FnMut(f64),
) -> MatchReport {
    let mut report = MatchReport::default();
    (report.problems, report.notes, report.workings) =
        answered(job, tables, |context| fill(context, job, &mut report, progress));
    report
}

fn fill(
    context: &mut Context<'_>,
    job: &Job,
    report: &mut MatchReport,
    progress: &mut dyn FnMut(f64),
) {
    // What is wrong with nests and frame is said elsewhere.
    let mut aside = Context::new(context.tables, context.format);
    let bench = Bench::read(&mut aside, job);
    let lying = pool::read(context, job, &bench);
    let uses = pool::uses(context, job);
    labels::once(context, bench.marked().chain(lying.iter().map(Lying::marked)));
    let unknown = Drawn::default();
    let judged: Vec<(CoilState, SeatReport)> = lying
        .iter()
        .map(|coil| {
            let drawn = coil.coil.unwrap_or(&unknown);
            let taped = (&coil.taped, &bench.instrument);
            let of = seat::judge(context, &coil.at, drawn, taped, Location::InANest, &seat::DRAWN);
            (of.0, SeatReport { label: Some(coil.label.clone()), ..of.1 })
        })
        .collect();
    report.bench = judged.iter().map(|(_, seat)| seat.clone()).collect();
    if let Some(stage) = Stage::of(context, &mut aside, job, &bench) {
        let pool = stage.pool(&lying, &judged, uses);
        report.set_aside = pool.set_aside();
        pool.ask_first(context);
        stage.place(context, &pool, report, progress);
    }
}

/// Nests of one make-up, and the height at which their loads are compared.
struct Stage<'b> {
    nests: Vec<&'b Drafted<'b>>,
    places: Vec<Place>,
    roles: Vec<Wanted>,
    height: Length,
}

/// One seat of each nest.
struct Wanted {
    coil: Rc<Drawn>,
    raise: Length,
}

impl Wanted {
    /// The load of a coil that is so high when free.
    fn load(&self, free: Length, height: Length) -> Option<Force> {
        let over = free + self.raise - height;
        let over = if over.value > 0.0 { over } else { Length::default() };
        Some(self.coil.rate?.value * over)
    }
}

impl<'b> Stage<'b> {
    fn of(
        context: &mut Context<'_>,
        aside: &mut Context<'_>,
        job: &Job,
        bench: &'b Bench<'b>,
    ) -> Option<Self> {
        let computed: Vec<Option<ComputedNest>> =
            bench.nests.iter().map(|nest| nest.computed(aside)).collect();
        let written = frame::read(aside, job, &bench.nest_names());
        let stacks = stack::rigid(aside, bench);
        let named = bench.named(&computed, &stacks);
        let loaded = written.as_ref().and_then(|written| written.loaded(aside, &named));
        let (nests, places, mean) = match (&written, &loaded) {
            (Some(written), Some(loaded)) => {
                let of = |id: &str| bench.nests.iter().find(|nest| nest.id == id);
                let nests = written.supports.iter().filter_map(|support| of(&support.nest));
                let places = loaded.frame.supports().iter().map(|support| support.place).collect();
                let settled = loaded.frame.settle(loaded.weight).ok();
                (nests.collect(), places, settled.map(|settled| settled.mean_height()))
            }
            _ => (bench.nests.iter().collect(), vec![Place::default(); bench.nests.len()], None),
        };
        let nests: Vec<&Drafted<'_>> = nests;
        let first = *nests.first()?;
        let roles = roles(context, &nests, first)?;
        let working = first.entry.working_height();
        let Some(height) = mean.or_else(|| working.value(context.system())) else {
            let text = "Give a working height, or the frame with its weight: the loads are compared at that height.";
            context.note(&working.path(&first.at), "height-unknown", text);
            return None;
        };
        Some(Self { nests, places, roles, height })
    }

    /// Every coil that could go into a seat.
    fn pool<'p>(
        &'p self,
        lying: &'p [Lying<'_>],
        judged: &'p [(CoilState, SeatReport)],
        uses: Use,
    ) -> Pool<'p> {
        let mut pool = Pool { uses, roles: self.roles.iter().map(|_| Vec::new()).collect() };
        for (nest, drafted) in self.nests.iter().enumerate() {
            let seats = drafted.seats.iter().zip(&drafted.reports).enumerate();
            for (index, (seated, report)) in seats {
                let pair = drafted.pair(index);
                let from = drafted.at.field("seats").item(index);
                let stays = Some((nest, drafted.id.as_str()));
                self.add(&mut pool, &seated.standing, report, &Lies { from, stays, pair });
            }
        }
        for (coil, (standing, report)) in lying.iter().zip(judged) {
            if report.measured || standing.not_good.is_some() {
                let lies = Lies { from: coil.at.clone(), stays: None, pair: &coil.pair };
                self.add(&mut pool, standing, report, &lies);
            }
        }
        pool
    }

    fn add<'p>(
        &self,
        pool: &mut Pool<'p>,
        standing: &'p CoilState,
        report: &'p SeatReport,
        lies: &Lies<'p>,
    ) {
        let pool_uses = pool.uses;
        let roles = self.roles.iter().zip(&mut pool.roles);
        for (role, coils) in roles.filter(|(role, _)| role.coil.id == report.coil) {
            let load = standing.free.and_then(|free| role.load(free, self.height));
            let Some(load) = load else { continue };
            let word = report.verdict.as_ref().map(|verdict| verdict.word);
            let usable = match word {
                Some(Word::Short | Word::Long | Word::Scrap) => false,
                Some(Word::TooClose) => pool_uses == Use::TooClose,
                Some(Word::Good | Word::None) | None => true,
            };
            coils.push(Pooled {
                label: report.label.as_deref().unwrap_or_default(),
                name: &report.name,
                load,
                own_doubt: role
                    .coil
                    .rate
                    .map_or(0.0, |rate| (rate.value * standing.own_doubt).value),
                word,
                usable,
                not_good: standing.not_good.as_deref(),
                lies: lies.clone(),
            });
        }
    }

    fn place(
        &self,
        context: &mut Context<'_>,
        pool: &Pool<'_>,
        report: &mut MatchReport,
        progress: &mut dyn FnMut(f64),
    ) {
        let format = context.format;
        let ties = pool.ties();
        let roles = self.roles.iter().zip(&pool.roles).map(|(role, coils)| Role {
            name: role.coil.name.clone(),
            coils: coils.iter().map(|coil| coil.of(&ties)).collect(),
            new: role.coil.free().and_then(|free| role.load(free, self.height)),
        });
        let roles: Vec<Role> = roles.collect();
        let source = "the mean of the nests at rest, or the working height where no frame rests";
        let values: [Value<'_>; 1] = [("h", &format.decimal(self.height))];
        report.height =
            Some(context.ledger.work(format.height(self.height), HEIGHT, &values, source));
        match matched_with_progress(&roles, &self.places, progress) {
            Ok(matching) => self.report(context, pool, &matching, report),
            Err(error) => context.problem(refused(context.system(), &error)),
        }
    }

    fn report(
        &self,
        context: &mut Context<'_>,
        pool: &Pool<'_>,
        matching: &Matching,
        report: &mut MatchReport,
    ) {
        let format = context.format;
        let spread = |context: &mut Context<'_>, spread: Force, [least, most]: [Force; 2]| {
            let values: [Value<'_>; 2] =
                [("F1", &format.say::<Force>(most)), ("F2", &format.say::<Force>(least))];
            context.ledger.work(format.figure::<Force>(spread), LOAD_SPREAD, &values, &SOURCE)
        };
        report.before = matching.before.map(|before| spread(context, before.spread(), before.ends));
        report.after = Some(spread(context, matching.reach.spread, matching.ends()));
        if !matching.reach.exact() {
            let Reach { spread, bound } = matching.reach;
            let values: [Value<'_>; 2] =
                [("rl", &format.say::<Force>(spread)), ("rb", &format.say::<Force>(bound))];
            let figure = format.figure::<Force>(spread - bound);
            report.gap = Some(context.ledger.work(figure, BEYOND_BOUND, &values, &SOURCE));
        }
        for (nest, (of, drafted)) in matching.nests.iter().zip(&self.nests).enumerate() {
            let chosen = of.coils.iter().zip(&pool.roles);
            let chosen: Vec<&Pooled<'_>> =
                chosen.filter_map(|(coil, coils)| coils.get(*coil)).collect();
            let loads: Vec<_> = chosen.iter().map(|coil| format.say::<Force>(coil.load)).collect();
            let terms = loads.iter().map(|load| [("F", load as _)]);
            let load =
                context.ledger.sum(format.figure::<Force>(of.load), SUM_OF_LOADS, terms, &SOURCE);
            let not_good = chosen.iter().filter_map(|coil| coil.not_good());
            report.not_good.extend(not_good.map(|coil| text!("{}, {coil}", drafted.id)));
            let stays = |coil: &Pooled<'_>| coil.lies.stays.is_some_and(|(at, _)| at == nest);
            for coil in chosen.iter().filter(|coil| !stays(coil)) {
                let from = match coil.lies.stays {
                    Some((_, other)) => text!("from {other}"),
                    None => "from the bench".to_owned(),
                };
                report.moves.push(text!("{}: {} {from}.", drafted.id, coil.called()));
            }
            let seats = chosen.iter().map(|coil| MatchedSeat {
                name: coil.name.to_owned(),
                label: coil.label.to_owned(),
                from: coil.lies.from.text().to_owned(),
                stays: stays(coil),
            });
            report.nests.push(MatchedNest {
                nest: drafted.id.clone(),
                load,
                seats: seats.collect(),
            });
        }
        report.left_over = matching
            .left_over
            .iter()
            .zip(&pool.roles)
            .flat_map(|(left, coils)| {
                left.iter().filter_map(|coil| Some(coils.get(*coil)?.called()))
            })
            .collect();
        report.sentences = self.sentences(format, pool, matching, report.after.as_ref());
    }

    fn sentences(
        &self,
        format: Format,
        pool: &Pool<'_>,
        matching: &Matching,
        after: Option<&Figure>,
    ) -> Vec<String> {
        let say = |force: Force| format.figure::<Force>(force).text;
        let height = format.height(self.height).text;
        let spread = after.map_or_else(String::new, |after| after.text.clone());
        let mut said = Vec::new();
        said.push(match matching.before {
            Some(_) if matching.moved == 0 => text!(
                "The coils stand where they belong: at {height} the loads of the nests differ by {spread}."
            ),
            Some(before) => text!(
                "At {height} the loads of the nests differ by {} as the coils stand now, and by {spread} placed like this.",
                say(before.spread())
            ),
            None => text!("At {height} the loads of the nests differ by {spread} placed like this."),
        });
        said.push(if matching.reach.exact() {
            "No other choice of these coils brings them closer.".to_owned()
        } else {
            let gap = matching.reach.spread - matching.reach.bound;
            text!("Another choice could bring them closer by {} at most.", say(gap))
        });
        let doubt = pool.nest_doubt();
        if doubt > 0.0 {
            let doubt = format.doubt::<Force>(si(doubt));
            said.push(text!("By the readings, the load of a nest is known to ± {doubt}."));
        }
        for (role, new) in self.roles.iter().zip(&matching.with_new) {
            if let Some(new) = new {
                let gained = matching.reach.spread - new.spread;
                said.push(if gained.value > 0.005 * matching.reach.spread.value {
                    let name = &role.coil.name;
                    text!(
                        "One new {name} of the book's height would bring this to {}.",
                        say(new.spread)
                    )
                } else {
                    text!("One new {} of the book's height would gain nothing.", role.coil.name)
                });
            }
        }
        said
    }
}

/// The seats that each nest has, where they are the same in all.
fn roles(
    context: &mut Context<'_>,
    nests: &[&Drafted<'_>],
    first: &Drafted<'_>,
) -> Option<Vec<Wanted>> {
    let make = |nest: &Drafted<'_>| -> Vec<(String, Length)> {
        nest.seats.iter().map(|seat| (seat.coil.id.clone(), seat.raise)).collect()
    };
    let wanted = make(first);
    let of_another_make =
        |nest: &&&Drafted<'_>| make(nest) != wanted || nest.seats.len() != nest.written_seats();
    if let Some(other) = nests.iter().find(of_another_make) {
        let text = text!(
            "{} and {} do not hold the same kinds of coils in the same order: which coil belongs where can be worked out only for nests of the same kinds of coils.",
            first.id,
            other.id
        );
        context.note(&other.at, "nests-differ", text);
        return None;
    }
    let twice = |(index, (id, _)): (usize, &(String, Length))| {
        wanted.iter().take(index).any(|(before, _)| before == id)
    };
    if wanted.is_empty() || wanted.iter().enumerate().any(twice) {
        let text = text!(
            "{}: which coil belongs where can be worked out only for nests in which each coil has a drawing of its own.",
            first.id
        );
        context.note(&first.at, "nests-differ", text);
        return None;
    }
    let roles = first.seats.iter();
    Some(roles.map(|seat| Wanted { coil: seat.coil.clone(), raise: seat.raise }).collect())
}

/// Where a coil is, and from which it may not part.
#[derive(Clone)]
struct Lies<'p> {
    from: Path,
    /// The nest in which it stands, by its place among the nests, and its name.
    stays: Option<(usize, &'p str)>,
    pair: &'p str,
}

/// A coil that could go into a seat.
struct Pooled<'p> {
    label: &'p str,
    name: &'p str,
    load: Force,
    own_doubt: f64,
    word: Option<Word>,
    usable: bool,
    not_good: Option<&'p str>,
    lies: Lies<'p>,
}

impl Pooled<'_> {
    /// `21 (Outer)`.
    fn called(&self) -> String {
        called(self.label, self.name)
    }

    /// `21 (Outer): short`.
    fn not_good(&self) -> Option<String> {
        self.not_good.map(|why| text!("{}: {why}", self.called()))
    }

    fn of(&self, ties: &[&str]) -> Coil {
        Coil {
            load: self.load,
            usable: self.usable,
            tie: ties.iter().position(|pair| *pair == self.lies.pair),
            stays: self.lies.stays.map(|(nest, _)| nest),
        }
    }
}

/// Every coil that could go into a seat, by role.
struct Pool<'p> {
    uses: Use,
    roles: Vec<Vec<Pooled<'p>>>,
}

impl<'p> Pool<'p> {
    /// The words by which coils are tied, each once.
    fn ties(&self) -> Vec<&'p str> {
        let mut ties: Vec<&str> = self.roles.iter().flatten().map(|coil| coil.lies.pair).collect();
        ties.retain(|pair| !pair.is_empty());
        ties.put_in_order(Ord::cmp);
        ties.dedup();
        ties
    }

    fn set_aside(&self) -> Vec<String> {
        let aside = self.roles.iter().flatten().filter(|coil| !coil.usable);
        aside.filter_map(Pooled::not_good).collect()
    }

    /// Asks before a coil is used of which it is not settled whether it is good.
    fn ask_first(&self, context: &mut Context<'_>) {
        let open = |coil: &&Pooled<'_>| coil.word == Some(Word::TooClose) && !coil.usable;
        let open: Vec<String> =
            self.roles.iter().flatten().filter(open).map(Pooled::called).collect();
        if !open.is_empty() {
            let text = text!(
                "Too close to call, so not used: {}. Measure them again, or say that such coils may be used.",
                quantity::joined(open.iter(), ", ")
            );
            context.note(&Path::of("use_too_close"), "too-close-left-out", text);
        }
    }

    /// The greatest doubt of a nest's load from what is each coil's own.
    fn nest_doubt(&self) -> f64 {
        let greatest =
            |coils: &Vec<Pooled<'_>>| coils.iter().map(|coil| coil.own_doubt).fold(0.0, f64::max);
        libm::sqrt(self.roles.iter().map(greatest).map(|doubt| doubt * doubt).sum())
    }
}

fn refused(system: System, error: &MatchingError) -> Problem {
    let code = match error {
        MatchingError::Lacking { .. } => "coils-lacking",
        MatchingError::Tied { .. }
        | MatchingError::TiedAlone { .. }
        | MatchingError::TiedTwice { .. } => "coils-tied",
        _ => "coils-refused",
    };
    Problem::said(&Path::of("bench"), code, &error.say(system), "")
}
