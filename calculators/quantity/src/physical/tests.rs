//! Units read and printed, against their definitions.

use super::*;
use approx::assert_relative_eq;

fn read_as<K: Kind>(text: &str, units: Units) -> f64 {
    read(&K::FACTS, &Value::from(text), units).expect(text)
}

#[test]
fn units_of_the_handbooks() {
    // NIST Handbook 44, appendix C, and NIST SP 811: exact definitions multiplied out.
    assert_relative_eq!(read_as::<kind::Temperature>("65 F", Units::Metric), 18.333_333, max_relative = 1e-6);
    assert_relative_eq!(read_as::<kind::Paint>("1", Units::Imperial), 3.785_411_784, max_relative = 1e-12);
    assert_relative_eq!(read_as::<kind::SmallVolume>("1 fl oz", Units::Metric), 29.573_529_56, max_relative = 1e-9);
    assert_relative_eq!(
        read_as::<kind::SpreadingRate>("1 ft2/gal", Units::Metric),
        0.024_542_386_75,
        max_relative = 1e-9
    );
    assert_relative_eq!(read_as::<kind::LineForce>("1 lbf/in", Units::Metric), 0.175_126_835_2, max_relative = 1e-9);
    assert_relative_eq!(read_as::<kind::Film>("1 mil", Units::Metric), 25.4, max_relative = 1e-12);
    assert_relative_eq!(read_as::<kind::AirFlow>("500 cfm", Units::Metric), 849.505, max_relative = 1e-5);
}

#[test]
fn text_names_its_unit_and_drops_zeros() {
    assert_eq!(Amount::<kind::Temperature>::of(18.0).text(Units::Imperial), "64.4 °F");
    assert_eq!(Amount::<kind::Angle>::of(45.75).text(Units::Metric), "45.75°");
    assert_eq!(Amount::<kind::Number>::of(0.00369).text(Units::Metric), "0.00369");
    assert_eq!(Amount::<kind::Number>::of(0.000_203_7).text(Units::Metric), "0.000204");
    assert_eq!(Amount::<kind::Number>::of(0.375).text(Units::Metric), "0.375");
    assert_eq!(Amount::<kind::Number>::of(14.3335).text(Units::Metric), "14.33");
    assert_eq!(Amount::<kind::VapourPressure>::of(73.836).text(Units::Metric), "73.84 hPa");
    assert_eq!(Amount::<kind::AirFlow>::of(32_176.7).text(Units::Metric), "32177 m³/h");
    assert_eq!(Amount::<kind::SmallVolume>::of(0.05).text(Units::Imperial), "0.0017 US fl oz");
    assert_eq!(Amount::<kind::Paint>::of(0.0478).text(Units::Metric), "0.048 L");
    assert_eq!(Amount::<kind::Number>::of(1e-12).text(Units::Metric), "0");
    assert_eq!(Amount::<kind::Hours>::of(-0.0001).text(Units::Metric), "0 h");
}

#[test]
fn a_foreign_unit_is_refused_with_the_known_ones() {
    let fault = read(&kind::Film::FACTS, &Value::from("3 kg"), Units::Metric);
    assert_eq!(fault, Err(PhysicalFault::Unit("µm, mil".to_owned())));
    assert_eq!(read(&kind::Film::FACTS, &Value::from("thick"), Units::Metric), Err(PhysicalFault::NotANumber));
}

#[test]
fn a_decimal_comma_and_other_rings_are_read() {
    for (text, degrees) in [("87,5", 87.5), ("87º", 87.0), ("87,25 °", 87.25), ("87˚", 87.0)] {
        assert_relative_eq!(read_as::<kind::Angle>(text, Units::Metric), degrees);
    }
    let doubtful = read(&kind::Film::FACTS, &Value::from("1,500 µm"), Units::Metric);
    assert_eq!(doubtful, Err(PhysicalFault::CommaInDoubt));
    assert!(read(&kind::Film::FACTS, &Value::from("1,2,3"), Units::Metric).is_err());
}

#[test]
fn waits_go_up_and_permitted_times_down_to_what_is_printed() {
    // By hand: 183.25 h is printed to a tenth; 28.125 s is 0.46875 min; a third of an hour.
    let up = |hours| Amount::<kind::Wait>::of(hours).text(Units::Metric);
    assert_eq!([183.25, 3_882.5, 1.0 / 3.0, 4.0].map(up), ["183.3 h", "3883 h", "0.34 h", "4 h"]);
    assert_eq!(Amount::<kind::PermittedMinutes>::of(0.468_75).text(Units::Metric), "0.4 min");
    assert_eq!(Amount::<kind::PermittedHours>::of(8.0).text(Units::Metric), "8 h");
}

#[test]
fn angles_keep_their_decimals_and_small_masses_do_not_vanish() {
    // By hand: 180 less 50.71 is 129.29; 0.0038 kg is 0.0084 lb.
    assert_eq!(Amount::<kind::Angle>::of(129.29).text(Units::Metric), "129.29°");
    assert_eq!(Amount::<kind::Mass>::of(0.0038).text(Units::Imperial), "0.0084 lb");
}
