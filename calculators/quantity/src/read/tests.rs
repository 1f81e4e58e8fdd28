use super::*;

fn inch(sixty_fourths: i64) -> Result<Length, LengthFault> {
    Ok(Length::sixty_fourths(sixty_fourths))
}

#[test]
fn one_length_in_every_text_form() {
    for text in [
        "7' 3 1/2\"",
        "7 ft 3-1/2 in",
        "7ft3 1/2in",
        "87 1/2",
        "87.5\"",
        "2222.5 mm",
        "2.2225 m",
        "222,25 cm",
        "7’ 3½”",
        "7′3½″",
        "87-1/2 inches",
        " 7 ft. 3 1/2 in. ",
        "87½",
        "7'3 1/2",
        "87 ½ in",
        "7' - 3 1/2\"",
        "2222.500mm",
        "2222500000 nm",
    ] {
        assert_eq!(Length::read(text, Units::Imperial), inch(87 * 64 + 32), "{text}");
    }
}

#[test]
fn a_bare_number_takes_the_shops_units() {
    assert_eq!(Length::read("3750", Units::Metric), Ok(Length::mm(3750)));
    assert_eq!(Length::read("96", Units::Imperial), Ok(Length::inches(96)));
    assert_eq!(Length::read_with_unit("96"), Err(LengthFault::NoUnit));
}

#[test]
fn what_could_mean_two_things_is_refused() {
    use LengthFault as F;
    for (text, units, fault) in [
        ("3,750", Units::Metric, F::CommaInDoubt),
        ("3,750 mm", Units::Metric, F::CommaInDoubt),
        ("12.6", Units::Imperial, F::DecimalInDoubt),
        ("87 1/2", Units::Metric, F::FractionInMillimetres),
        ("12.3 5/8", Units::Imperial, F::DecimalAndFraction),
        ("3/7", Units::Imperial, F::Denominator),
        ("5/0", Units::Imperial, F::Denominator),
        ("9/8", Units::Imperial, F::FractionTooLarge),
        ("12' 14\"", Units::Imperial, F::TwelveInches),
        ("7.5' 3\"", Units::Imperial, F::BrokenFeet),
        ("", Units::Metric, F::Empty),
        ("   ", Units::Metric, F::Empty),
        ("wide", Units::Metric, F::NotALength),
        ("12 12 1/2", Units::Imperial, F::NotALength),
        ("1.2.3", Units::Metric, F::NotALength),
        ("999999999999999999999999999999999", Units::Metric, F::TooLong),
        ("12-", Units::Imperial, F::NotALength),
    ] {
        assert_eq!(Length::read(text, units), Err(fault), "{text:?}");
    }
}

#[test]
fn what_is_finer_than_a_nanometre_is_the_nearest_one() {
    // 0.708661 x 25.4 = 17.9999894 mm, by hand.
    assert_eq!(Length::read("0.708661 in", Units::Imperial), Ok(Length::from_nm(17_999_989)));
    assert_eq!(Length::read("0.00000001 in", Units::Metric), Ok(Length::ZERO));
    assert_eq!(Length::read("0.12345678901234567890123456789 m", Units::Metric), Ok(Length::from_nm(123_456_789)));
}

#[test]
fn shades_of_a_mark() {
    assert_eq!(Length::read("12 7/8 full", Units::Imperial), inch(12 * 64 + 57));
    assert_eq!(Length::read("12 7/8 in shy", Units::Imperial), inch(12 * 64 + 55));
}

#[test]
fn every_valid_example_is_valid() {
    use LengthFault as F;
    let all = [
        F::Empty,
        F::NotALength,
        F::CommaInDoubt,
        F::Denominator,
        F::FractionTooLarge,
        F::DecimalAndFraction,
        F::TwelveInches,
        F::BrokenFeet,
        F::DecimalInDoubt,
        F::FractionInMillimetres,
        F::NoUnit,
        F::TooLong,
    ];
    for fault in all {
        for units in [Units::Imperial, Units::Metric] {
            assert!(Length::read_with_unit(fault.valid_example(units)).is_ok(), "{fault:?}");
        }
    }
}
