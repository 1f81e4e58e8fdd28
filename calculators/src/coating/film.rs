//! Wet film, dry film, spreading rate and the paint that goes through the gun.
//!
//! Volume solids, not weight solids: what stays when the water has gone, by volume. Thinner lowers the solids of what is in the
//! pot; it never lowers what must stay on the wall.

use crate::catalogue::works::{CFR_40_60, GEOMETRY, HVLP_RULES, THIS_BOOK};
use crate::catalogue::{Cited, Source, Standing};
use crate::quantity::{Amount, kind};

/// The identities of this file.
pub const SOURCE: Source =
    Source::new(GEOMETRY, "a volume spread to a thickness: 1 L over 1 m² is 1000 µm", Standing::Derived);

/// Wet film that leaves a dry film, with thinner as a share of the paint's volume.
///
/// Units: µm. Range: volume solids 0 to 1, excluded zero. Formula: dry × (1 + thinner) / solids.
pub fn wet_film(dry: Amount<kind::Film>, volume_solids: f64, thinner: f64) -> Amount<kind::Film> {
    Amount::of(dry.get() * (1.0 + thinner) / volume_solids)
}

/// Dry film that a wet film leaves.
pub fn dry_film(wet: Amount<kind::Film>, volume_solids: f64, thinner: f64) -> Amount<kind::Film> {
    Amount::of(wet.get() * volume_solids / (1.0 + thinner))
}

/// Area that a litre covers at a film thickness, nothing lost.
pub fn spreading_rate(film: Amount<kind::Film>) -> Amount<kind::SpreadingRate> {
    Amount::of(1_000.0 / film.get())
}

/// Litres through the gun for an area at a wet film, with what reaches the wall as a share of what is sprayed.
pub fn litres_sprayed(square_metres: f64, wet: Amount<kind::Film>, transfer: f64) -> Amount<kind::Paint> {
    Amount::of(square_metres * wet.get() / 1_000.0 / transfer)
}

/// One way of spraying and the share that a rule takes to reach the work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Transfer {
    /// The way of spraying.
    pub method: &'static str,
    /// What a rule takes to reach the work, 0 to 1.
    pub share: Cited<f64>,
}

const fn transfer(method: &'static str, share: f64, locator: &'static str) -> Transfer {
    Transfer { method, share: Cited::new(share, Source::new(CFR_40_60, locator, Standing::Published)) }
}

const fn remembered(method: &'static str, share: f64, locator: &'static str) -> Transfer {
    Transfer { method, share: Cited::new(share, Source::new(CFR_40_60, locator, Standing::FromMemory)) }
}

/// Shares for spraying by hand on walls and trim: this book's own for an airless gun, and the least that a high-volume low-pressure gun is
/// taken to reach where rules demand one.
pub const TRANSFER_BY_HAND: [Transfer; 2] = [
    Transfer {
        method: "airless gun on a wall with boards",
        share: Cited::new(
            0.55,
            Source::new(THIS_BOOK, "taken where a shop has not weighed its own", Standing::HouseDefault),
        ),
    },
    Transfer {
        method: "high-volume low-pressure gun (HVLP)",
        share: Cited::new(
            0.65,
            Source::new(HVLP_RULES, "65 % at least, as rules on HVLP guns ask", Standing::FromMemory),
        ),
    },
];

/// Shares that emission rules assume. They are for small factory parts: a flat wall does better, open trim worse.
pub const TRANSFER_IN_RULES: [Transfer; 9] = [
    transfer("air atomized spray", 0.25, "60.313"),
    transfer("airless spray", 0.25, "60.313"),
    transfer("manual electrostatic spray", 0.60, "60.313"),
    remembered("nonrotational automatic electrostatic spray", 0.70, "60.313"),
    remembered("rotating head electrostatic spray", 0.80, "60.313"),
    transfer("dip or flow coat", 0.90, "60.313"),
    transfer("air atomized spray", 0.25, "60.723"),
    transfer("air-assisted airless spray", 0.40, "60.723"),
    transfer("electrostatic air spray", 0.40, "60.723"),
];

/// Teeth of a notched gauge in µm: 1 to 8 mil by the mil, then 10 and 12, as the usual gauge has them. Common practice, no source.
pub const GAUGE_TEETH_UM: [f64; 10] = [25.4, 50.8, 76.2, 101.6, 127.0, 152.4, 177.8, 203.2, 254.0, 304.8];
/// Teeth of a metric gauge in µm: 25 to 200 by 25, then 250 and 300. Common practice, no source.
pub const METRIC_TEETH_UM: [f64; 10] = [25.0, 50.0, 75.0, 100.0, 125.0, 150.0, 175.0, 200.0, 250.0, 300.0];

/// The last tooth that is wetted by a film and the first that stays dry; `None` off the ends of the gauge.
pub fn gauge_teeth(wet_um: f64, teeth: &[f64]) -> (Option<f64>, Option<f64>) {
    let wetted = teeth.iter().copied().rfind(|tooth| *tooth <= wet_um + 0.05);
    let dry = teeth.iter().copied().find(|tooth| *tooth > wet_um + 0.05);
    (wetted, dry)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    #[test]
    fn wet_and_dry_are_inverse() {
        let dry = Amount::of(38.0);
        let wet = wet_film(dry, 0.38, 0.1);
        assert_abs_diff_eq!(wet.get(), 110.0, epsilon = 1e-9);
        assert_abs_diff_eq!(dry_film(wet, 0.38, 0.1).get(), dry.get(), epsilon = 1e-9);
    }

    #[test]
    fn a_gauge_names_the_pair_of_teeth() {
        assert_eq!(gauge_teeth(110.0, &METRIC_TEETH_UM), (Some(100.0), Some(125.0)));
        assert_eq!(gauge_teeth(10.0, &METRIC_TEETH_UM), (None, Some(25.0)));
        assert_eq!(gauge_teeth(900.0, &METRIC_TEETH_UM), (Some(300.0), None));
    }
}
