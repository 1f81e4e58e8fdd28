//! Moist air: saturation, vapour pressure, dew point, humidity ratio, wet bulb.
//!
//! The formulas are those of the ASHRAE handbook, over ice and over water. The shorter Magnus form agrees within 0.05 K of dew point
//! between -5 and 35 °C, but two formulas for one number would be one too many.

use crate::catalogue::works::ASHRAE_FUNDAMENTALS;
use crate::catalogue::{Source, Standing};

/// Where the formulas of this file come from.
pub const SOURCE: Source = Source::new(ASHRAE_FUNDAMENTALS, "equations 5, 6, 22 and 33 to 35", Standing::Published);

/// Standard pressure at sea level, in pascal (ASHRAE Fundamentals 2017, chapter 1, equation 3 at zero altitude).
pub const SEA_LEVEL_PA: f64 = 101_325.0;

/// Zero of the Celsius scale in kelvin, by definition.
const ZERO_C: f64 = 273.15;
/// Ratio of the molar masses of water and dry air (ASHRAE Fundamentals 2017, chapter 1, equation 20).
const WATER_TO_AIR: f64 = 0.621_945;
/// Gas constant of water vapour, J/(kg K): 8.314 462 618 / 18.015 268 g/mol (Fundamentals 2017, equation 2).
const VAPOUR_J_KG_K: f64 = 461.524;

/// Over ice, -100 to 0 °C: ASHRAE Fundamentals 2017, chapter 1, equation 5.
const ICE: [f64; 7] =
    [-5.674_535_9e3, 6.392_524_7, -9.677_843_0e-3, 6.221_570_1e-7, 2.074_782_5e-9, -9.484_024_0e-13, 4.163_501_9];
/// Over water, 0 to 200 °C: ASHRAE Fundamentals 2017, chapter 1, equation 6.
const WATER: [f64; 7] =
    [-5.800_220_6e3, 1.391_499_3, -4.864_023_9e-2, 4.176_476_8e-5, -1.445_209_3e-8, 0.0, 6.545_967_3];

/// Pressure of saturated water vapour in pascal, at -100 to 200 °C; the ends are used outside.
/// # Source
/// ASHRAE Fundamentals 2017, chapter 1, equations 5 and 6.
pub fn saturation_pa(celsius: f64) -> f64 {
    let celsius = celsius.clamp(-100.0, 200.0);
    let t = celsius + ZERO_C;
    let c = if celsius < 0.01 { ICE } else { WATER };
    libm::exp(c[0] / t + c[1] + t * (c[2] + t * (c[3] + t * (c[4] + t * c[5]))) + c[6] * libm::log(t))
}

/// The temperature at which vapour of this pressure is saturated, -100 to 200 °C, by halving the interval to a nanokelvin.
/// # Source
/// ASHRAE Fundamentals 2017, chapter 1: the inverse of equations 5 and 6.
pub fn saturated_at(pascal: f64) -> f64 {
    let (mut low, mut high) = (-100.0, 200.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if saturation_pa(middle) < pascal { low = middle } else { high = middle }
    }
    (low + high) / 2.0
}

/// Pressure of the water vapour in air of a relative humidity, in pascal. Range: 0 to 100 % RH.
pub fn vapour_pa(celsius: f64, rh_percent: f64) -> f64 {
    rh_percent / 100.0 * saturation_pa(celsius)
}

/// Dew point in °C of air at a temperature and relative humidity (above 0 %).
pub fn dew_point(celsius: f64, rh_percent: f64) -> f64 {
    saturated_at(vapour_pa(celsius, rh_percent))
}

/// What the air could still take up, in pascal: saturation less what is there.
pub fn deficit_pa(celsius: f64, rh_percent: f64) -> f64 {
    saturation_pa(celsius) - vapour_pa(celsius, rh_percent)
}

/// Relative humidity in percent of the same air next to a surface of another temperature; above 100 it condenses.
pub fn rh_at_surface(celsius: f64, rh_percent: f64, surface_celsius: f64) -> f64 {
    100.0 * vapour_pa(celsius, rh_percent) / saturation_pa(surface_celsius)
}

/// Humidity ratio in kg of water per kg of dry air, at a pressure in pascal.
/// # Source
/// ASHRAE Fundamentals 2017, chapter 1, equation 20.
pub fn humidity_ratio(vapour_pa: f64, pressure_pa: f64) -> f64 {
    WATER_TO_AIR * vapour_pa / (pressure_pa - vapour_pa)
}

/// Water in saturated air, in grams per cubic metre (ideal gas).
pub fn saturation_g_m3(celsius: f64) -> f64 {
    1_000.0 * saturation_pa(celsius) / (VAPOUR_J_KG_K * (celsius + ZERO_C))
}

/// Humidity ratio of air read by a dry and a wet thermometer.
/// # Source
/// ASHRAE Fundamentals 2017, chapter 1, equations 33 (above freezing) and 35 (below).
pub fn humidity_ratio_from_wet_bulb(celsius: f64, wet_celsius: f64, pressure_pa: f64) -> f64 {
    let saturated = humidity_ratio(saturation_pa(wet_celsius), pressure_pa);
    let apart = celsius - wet_celsius;
    if wet_celsius >= 0.0 {
        ((2_501.0 - 2.326 * wet_celsius) * saturated - 1.006 * apart) / (2_501.0 + 1.86 * celsius - 4.186 * wet_celsius)
    } else {
        ((2_830.0 - 0.24 * wet_celsius) * saturated - 1.006 * apart) / (2_830.0 + 1.86 * celsius - 2.1 * wet_celsius)
    }
}

/// Pressure of the vapour in air of a humidity ratio, in pascal: the inverse of [`humidity_ratio`].
pub fn vapour_pa_of_ratio(ratio: f64, pressure_pa: f64) -> f64 {
    pressure_pa * ratio / (WATER_TO_AIR + ratio)
}

/// Wet-bulb temperature in °C, by halving between dew point and air temperature.
pub fn wet_bulb(celsius: f64, rh_percent: f64, pressure_pa: f64) -> f64 {
    let ratio = humidity_ratio(vapour_pa(celsius, rh_percent), pressure_pa);
    let (mut low, mut high) = (dew_point(celsius, rh_percent).min(celsius), celsius);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if humidity_ratio_from_wet_bulb(celsius, middle, pressure_pa) < ratio { low = middle } else { high = middle }
    }
    (low + high) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    #[test]
    fn saturation_and_its_inverse_agree() {
        for tenths in -400..600 {
            let celsius = f64::from(tenths) / 10.0;
            assert_abs_diff_eq!(saturated_at(saturation_pa(celsius)), celsius, epsilon = 0.02);
        }
    }

    #[test]
    fn saturated_air_is_its_own_dew_point_and_wet_bulb() {
        for celsius in [-3.0, 5.0, 18.0, 30.0] {
            assert_abs_diff_eq!(dew_point(celsius, 100.0), celsius, epsilon = 1e-6);
            assert_abs_diff_eq!(wet_bulb(celsius, 100.0, SEA_LEVEL_PA), celsius, epsilon = 1e-4);
        }
    }

    #[test]
    fn saturated_air_at_18_degrees_holds_15_grams() {
        // Tables of saturated vapour density, from memory: 15.4 g/m³ at 18 °C.
        assert_abs_diff_eq!(saturation_g_m3(18.0), 15.4, epsilon = 0.1);
    }
}
