//! A shop's own values, and the book's estimates where it has none: beads, losses, hours. Which is which is kept, to be told.

use crate::catalogue::{Figure, Words};
use crate::price::labour::HOUSE_RATES;
use crate::quantity::{Amount, Kind, Length, Physical, Run, Units, Within};
use crate::wall::shop::{Pace, Shop, Usage};

/// Paint that reaches the work, as a share, until a shop has weighed its own. An estimate of this book.
pub(super) const TRANSFER: f64 = 0.55;
/// Litres that stay in hose and pot. An estimate of this book.
pub(super) const HOSE_L: f64 = 0.475;
/// 10.1 US fl oz in millilitres, the cartridge of an inch shop.
const TEN_OUNCES_ML: f64 = 298.692_648_6;
/// Square metres a hand sprays in an hour, setting up and cleaning left aside. An estimate of this book.
const SPRAY_M2_H: f64 = 20.0;

/// Values that were taken, those of the book and those of the shop apart.
#[derive(Default)]
pub(super) struct Taken {
    book: Vec<(&'static str, Figure)>,
    shop: Vec<(&'static str, Figure)>,
}

impl Taken {
    fn take<T: Into<Figure> + Copy>(&mut self, name: &'static str, given: Option<T>, usual: T) -> T {
        let value = given.unwrap_or(usual);
        if given.is_some() { &mut self.shop } else { &mut self.book }.push((name, value.into()));
        value
    }

    fn length<const A: i64, const B: i64>(
        &mut self,
        name: &'static str,
        given: Option<Within<A, B>>,
        usual: Length,
    ) -> Length {
        self.take(name, given.map(Within::get), usual)
    }

    fn amount<K: Kind, const A: i64, const B: i64>(
        &mut self,
        name: &'static str,
        given: Option<Physical<K, A, B>>,
        usual: f64,
    ) -> f64
    where
        Amount<K>: Into<Figure>,
    {
        self.take(name, given.map(Physical::amount), Amount::of(usual)).get()
    }

    /// What was taken, the book's estimates in one sentence and the shop's in another.
    pub(super) fn told(&self) -> impl Iterator<Item = Words> {
        let sentence = |whose: &str, values: &[(&'static str, Figure)]| {
            let names: Vec<String> = values.iter().map(|(name, _)| format!("{name} {{}}")).collect();
            let start = Words::new(format!("{whose}: {}", names.join(", ")));
            let told = values.iter().fold(start, |words, (_, figure)| words.with(figure.clone()));
            (!values.is_empty()).then_some(told)
        };
        [sentence("estimates of this book", &self.book), sentence("the shop’s own estimates", &self.shop)]
            .into_iter()
            .flatten()
    }
}

/// Beads, cartridges, losses and reserves; shares are parts of one.
pub(super) struct Amounts {
    pub(super) bead: Length,
    pub(super) wave: f64,
    pub(super) adhesive_lost: f64,
    pub(super) adhesive_cartridge: f64,
    pub(super) leg: Length,
    pub(super) caulk_lost: f64,
    pub(super) caulk_cartridge: f64,
    pub(super) hole: f64,
    pub(super) shrink: f64,
    pub(super) tape_roll: Length,
    /// In percent.
    pub(super) tape_extra: f64,
    pub(super) paint_reserve: f64,
    pub(super) taken: Taken,
}

impl Amounts {
    pub(super) fn of(usage: &Usage, units: Units) -> Self {
        let (bead, leg, cartridge, roll) = match units {
            Units::Imperial => (Length::um(6_350), Length::um(3_175), TEN_OUNCES_ML, Length::inches(180 * 12)),
            Units::Metric => (Length::mm(6), Length::mm(3), 300.0, Length::mm(55_000)),
        };
        let mut taken = Taken::default();
        Self {
            bead: taken.length("bead of adhesive", usage.bead, bead),
            wave: taken.amount("wave of the bead", usage.wave, 1.25),
            adhesive_lost: taken.amount("adhesive lost", usage.adhesive_lost, 10.0) / 100.0,
            adhesive_cartridge: taken.amount("cartridge of adhesive", usage.adhesive_cartridge, cartridge),
            leg: taken.length("leg of the caulk", usage.leg, leg),
            caulk_lost: taken.amount("caulk lost", usage.caulk_lost, 25.0) / 100.0,
            caulk_cartridge: taken.amount("cartridge of caulk", usage.caulk_cartridge, cartridge),
            hole: taken.amount("filler in a nail hole", usage.hole, 0.05),
            shrink: taken.amount("filler shrinks", usage.shrink, 10.0) / 100.0,
            tape_roll: taken
                .take("roll of tape", usage.tape_roll.map(|roll| Run::of(roll.get())), Run::of(roll))
                .length(),
            tape_extra: taken.amount("tape on top", usage.tape_extra, 10.0),
            paint_reserve: taken.amount("paint on top", usage.paint_reserve, 5.0) / 100.0,
            taken,
        }
    }
}

/// Hours of one pair of hands by task, difficulty left aside.
pub(super) struct Rates {
    pub(super) difficulty: f64,
    pub(super) set_out: f64,
    pub(super) rail: f64,
    pub(super) board: f64,
    pub(super) mitre: f64,
    pub(super) plate: f64,
    pub(super) hole: f64,
    pub(super) sand_set_up: f64,
    pub(super) sand_board: f64,
    pub(super) denib_set_up: f64,
    pub(super) denib_board: f64,
    /// Metres of edge in an hour.
    pub(super) caulk_run: f64,
    pub(super) mask_set_up: f64,
    pub(super) opening: f64,
    pub(super) coat_set_up: f64,
    /// Square metres in an hour.
    pub(super) sprayed: f64,
    pub(super) pull_tape: f64,
    pub(super) hand_over: f64,
    pub(super) taken: Taken,
}

impl Rates {
    pub(super) fn of(pace: &Pace) -> Self {
        let book = |task: &str| HOUSE_RATES.iter().find(|(name, _, _)| *name == task).map_or(0.0, |rate| rate.2);
        let mut taken = Taken::default();
        Self {
            difficulty: taken.amount("difficulty", pace.difficulty, 1.0),
            set_out: taken.amount("set out a wall", pace.set_out, book("set out") / 2.0),
            rail: taken.amount("a rail", pace.rail, book("fix rails")),
            board: taken.amount("a board", pace.board, book("fix boards")),
            mitre: taken.amount("a mitre", pace.mitre, book("cut mitres")),
            plate: taken.amount("a plate", pace.plate, book("work round plates")),
            hole: taken.amount("a nail hole", pace.hole, book("fill") * 60.0) / 60.0,
            sand_set_up: taken.amount("set up for sanding", pace.sand_set_up, 0.5),
            sand_board: taken.amount("sand a board", pace.sand_board, 0.05),
            denib_set_up: taken.amount("set up for de-nibbing", pace.denib_set_up, 0.25),
            denib_board: taken.amount("de-nib a board", pace.denib_board, 0.03),
            caulk_run: taken
                .length("caulk run in an hour", pace.caulk_run, Length::nearest_mm(1_000.0 / book("caulk")))
                .in_m(),
            mask_set_up: taken.amount("set up for masking", pace.mask_set_up, 0.5),
            opening: taken.amount("mask an opening", pace.opening, book("mask")),
            coat_set_up: taken.amount("set up for a coat", pace.coat_set_up, 0.75),
            sprayed: taken.amount("sprayed in an hour", pace.sprayed, SPRAY_M2_H),
            pull_tape: taken.amount("pull the tape", pace.pull_tape, 0.5),
            hand_over: taken.amount("put right and hand over", pace.hand_over, 1.0),
            taken,
        }
    }
}

/// Everything that a shop has and the book fills in.
pub(super) struct House {
    pub(super) amounts: Amounts,
    pub(super) rates: Rates,
}

impl House {
    pub(super) fn of(shop: &Shop, units: Units) -> Self {
        Self { amounts: Amounts::of(&shop.usage, units), rates: Rates::of(&shop.pace) }
    }
}
