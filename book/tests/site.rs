//! The rendered site as a whole: whatever a page points at is there, in either unit system.

use std::collections::{BTreeMap, BTreeSet};

use book::{Handbook, Light, Site, render};
use calculators::quantity::Units;

const BOTH: [Units; 2] = [Units::Imperial, Units::Metric];

fn book() -> Handbook {
    Handbook::built_in().unwrap_or_else(|faults| panic!("{faults}"))
}

/// The values of an attribute in the order in which they stand.
fn values<'h>(html: &'h str, attribute: &str) -> Vec<&'h str> {
    let mark = format!(" {attribute}=\"");
    html.split(&mark).skip(1).filter_map(|rest| rest.split('"').next()).collect()
}

fn pages(site: &Site) -> BTreeMap<String, String> {
    site.pages.iter().map(|page| (page.path.clone(), page.html(Light::Day))).collect()
}

#[test]
fn every_link_leads_to_a_page_and_a_place_on_it() {
    let book = book();
    for units in BOTH {
        let site = render(&book, units);
        let pages = pages(&site);
        let files: BTreeSet<&str> = site.assets.iter().map(|asset| asset.path.as_str()).collect();
        let mut looked_at = 0;
        for (path, html) in &pages {
            for target in values(html, "href").into_iter().chain(values(html, "src")) {
                let (file, anchor) = target.split_once('#').unwrap_or((target, ""));
                let file = if file.is_empty() { path } else { file };
                // Search, the wall sheet and practice are made by the server on request.
                if file == "find" || file.starts_with("/wall?") || file.contains("://") {
                    continue;
                }
                if let Some(id) = file.strip_prefix("/practice") {
                    let known = id.strip_prefix('/').is_none_or(|id| calculators::practice::exercise(id).is_some());
                    assert!(known, "{path} points at {target}: there is no such exercise");
                    continue;
                }
                looked_at += 1;
                let page = pages.get(file);
                assert!(page.is_some() || files.contains(file), "{path} points at {target}, which is not there");
                if let Some(page) = page.filter(|_| !anchor.is_empty()) {
                    assert!(values(page, "id").contains(&anchor), "{path} points at {target}: no such place");
                }
            }
        }
        assert!(400 < looked_at, "only {looked_at} links were looked at");
    }
}

#[test]
fn ids_are_unique_and_labels_name_something() {
    let book = book();
    for units in BOTH {
        for (path, html) in pages(&render(&book, units)) {
            let ids = values(&html, "id");
            let once: BTreeSet<_> = ids.iter().collect();
            assert_eq!(once.len(), ids.len(), "{path}: an id stands twice");
            for attribute in ["for", "aria-describedby", "aria-labelledby"] {
                for id in values(&html, attribute) {
                    assert!(once.contains(&id), "{path}: {attribute} names {id}, which is not there");
                }
            }
        }
    }
}

#[test]
fn nothing_on_a_page_needs_more_than_its_own_site_allows() {
    let book = book();
    for units in BOTH {
        for (path, html) in pages(&render(&book, units)) {
            for forbidden in [" style=\"", "<style", "javascript:", " onclick", "http://", "@light@"] {
                assert!(!html.contains(forbidden), "{path} holds {forbidden}");
            }
            let scripts = html.matches("<script").count();
            assert_eq!(
                scripts,
                html.matches("<script type=\"module\" src=\"").count(),
                "{path}: a script that is no file"
            );
        }
    }
}

#[test]
fn a_page_is_the_same_in_every_light_but_for_one_word() {
    let site = render(&book(), Units::Imperial);
    for page in &site.pages {
        let day = page.html(Light::Day).replace("data-light=\"day\"", "data-light=\"lamp\"");
        assert_eq!(day, page.html(Light::Lamp), "{}", page.path);
    }
}

#[test]
fn lengths_in_running_text_follow_the_units() {
    let book = book();
    let survey = |units| {
        let site = render(&book, units);
        let page = site.pages.iter().find(|page| page.path == "survey.html").expect("the survey is a chapter");
        let html = page.html(Light::Day);
        // The forms of a page show both systems side by side; running text shows one.
        let sentence = html.split("House limits").nth(1).expect("the limits are stated");
        sentence.split("</p>").next().unwrap_or_default().to_owned()
    };
    let (imperial, metric) = (survey(Units::Imperial), survey(Units::Metric));
    // The loop limit is written `1/16 in | 1.5 mm`.
    let limit = "1.5<span class=\"un\">mm</span>";
    assert!(imperial.contains("<i>1</i><i>16</i>") && !imperial.contains(limit));
    assert!(metric.contains(limit) && !metric.contains("<i>1</i><i>16</i>"));
}

#[test]
fn a_search_finds_the_step_and_the_calculation() {
    let book = book();
    let hits = book.find("second coat");
    assert!(hits.iter().any(|hit| hit.path == "spray.html#recoat-time"), "{hits:#?}");
    assert!(book.find("qqqq").is_empty());
    assert!(book.find(&"a".repeat(100_000)).is_empty());
}

/// Questions as they are asked with dusty gloves, and the calculation or place that must stand among the first four hits.
const ASKED: [(&str, &str); 44] = [
    ("where is my next mark", "set-out.html"),
    ("how long is board 7", "cut-lengths"),
    ("what do I set the saw to", "saw-angle"),
    ("which nail", "nail-choice"),
    ("switch in the way", "the-switch-is-in-the-way"),
    ("board doesn't meet the base", "base-and-board"),
    ("wall longer than my stick", "scarf-joint"),
    ("is the gap ok", "equal-bays"),
    ("how many tubes of caulk", "#caulk"),
    ("what grit next", "grit-ladder"),
    ("can I spray", "spray-climate"),
    ("how much thinner", "thinning"),
    ("when is the second coat", "recoat-time"),
    ("pull the tape", "tape-pull"),
    ("skirting", "base-and-board"),
    ("glue", "adhesive"),
    ("how loud", "noise-dose"),
    ("margin", "price-at-margin"),
    ("nail length 18 mm board over 12.5 plasterboard into stud", "nail-choice"),
    ("nail length 18 mm board 12.5 mm plasterboard", "nail-choice"),
    ("what nail for 18mm board", "nail-choice"),
    ("how long a nail", "nail-choice"),
    ("which nail through drywall", "nail-choice"),
    ("switch box board", "plate-clash"),
    ("light switch hits a board", "plate-clash"),
    ("board too close to switch", "plate-clash"),
    ("recoat at 15 °C", "recoat-time"),
    ("second coat cold room", "recoat-time"),
    ("when can I paint again", "recoat-time"),
    ("how long between coats", "recoat-time"),
    ("how much caulk", "#caulk"),
    ("caulk tubes for 40 m", "#caulk"),
    ("silicone how many", "#caulk"),
    ("which sandpaper after 120", "grit-ladder"),
    ("next grit", "grit-ladder"),
    ("what to charge", "price-at-margin"),
    ("how much do I charge for the job", "price-at-margin"),
    ("day rate", "labour-hours"),
    ("how many litres of paint", "paint-film"),
    ("spacing between battens", "equal-bays"),
    ("mitre angle not square", "saw-angle"),
    ("my board is too short", "the-board-does-not-meet-the-base"),
    ("practice", "practice"),
    ("ladder", "ladders-and-stairs"),
];

/// Questions as a newcomer types them, slang and misspellings among them, none a chapter's title, and where the first hit leads.
/// What a question means is common practice, no source.
const TYPED: [(&str, &str); 55] = [
    ("calk", "caulk#caulk|caulk.html#caulk"),
    ("how many tubes of calking", "caulk.html#caulk"),
    ("nails for plasterbord", "#nail-choice"),
    ("moisure in my boards", "#equilibrium-moisture"),
    ("mitter", "#saw-angle"),
    ("mitre", "#saw-angle"),
    ("miter saw setting", "#saw-angle"),
    ("wainscot spacing", "#equal-bays"),
    ("pattress sits too deep now", "#box-set-back"),
    ("orange peel", "spray.html#when-it-looks-wrong"),
    ("white bloom on the paint", "spray.html#when-it-looks-wrong"),
    ("how long does paint take to dry", "#recoat-time"),
    ("paint still tacky", "#recoat-time"),
    ("too cold to paint", "#spray-climate"),
    ("skirting thicker than the batten", "#base-and-board"),
    ("dado rail how high", "#rail-heights"),
    ("how long a brad", "#nail-choice|#nail-size"),
    ("what is an 8d nail", "#nail-size"),
    ("tubes of glue", "#adhesive"),
    ("sandpaper after 80 grit", "#grit-ladder"),
    ("mask class", "which-mask-or"),
    ("respirator class", "which-mask-or"),
    ("stove and extractor fan", "#flues-and-fans"),
    ("trim on a fire door", "fire-door"),
    ("asbestos what year", "the-year-it-was-built"),
    ("lead paint 1970", "#lead-paint-area"),
    ("paint too thick for the gun", "#thinning"),
    ("paint ran", "it-ran"),
    ("tape ripped the paint", "#tape-pull"),
    ("how much to bid", "#price-at-margin"),
    ("vat on the invoice", "#stage-payments"),
    ("how big a deposit", "#stage-payments"),
    ("mark up of 20 percent", "#margin-of-markup"),
    ("how many 16 footers do I order", "#cutting-plan"),
    ("crown moulding angles", "#compound-mitre"),
    ("picture frame corner", "#frame-mitre"),
    ("bannister too close to the wall", "#handrail-clearance"),
    ("how far from the radiator", "#heat-clearance"),
    ("is my corner square", "#corner-angle"),
    ("bowed wall", "#arc-radius"),
    ("screw into metal studs", "#metal-studs-and-masonry"),
    ("match the wall colour", "match-a-wall-colour"),
    ("boards over carpet", "#the-foot-of-a-board"),
    ("mdf swelling in summer", "#board-movement"),
    ("router on a notch", "#rounded-edges-in-a-notch"),
    ("how loud is the saw", "#noise-dose"),
    ("white finger from the sander", "#vibration-dose"),
    ("old caulk bead behind the board", "#the-foot-of-a-board"),
    ("window without casing", "windows-without-casing"),
    ("rails between boards", "#short-rails"),
    ("dark colour beside white contrast", "#colour-values"),
    ("how many tins of paint", "#tins|#paint-film"),
    ("gun too fast or slow", "#spray-passes"),
    ("who relights the boiler", "hazards.html"),
    ("can i nail here", "can-i-nail-here"),
];

#[test]
fn what_a_newcomer_types_is_answered_by_the_first_hit() {
    let book = book();
    let wrong: Vec<String> = TYPED
        .iter()
        .filter_map(|(typed, due)| {
            let first = book.find(typed).into_iter().next().map(|hit| hit.path).unwrap_or_default();
            (!due.split('|').any(|due| first.contains(due))).then(|| format!("«{typed}» finds {first}, not {due}"))
        })
        .collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn a_question_in_a_tradespersons_words_is_answered_by_the_first_hits() {
    let book = book();
    for (asked, due) in ASKED {
        let hits = book.find(asked);
        let first: Vec<&str> = hits.iter().take(4).map(|hit| hit.path.as_str()).collect();
        assert!(first.iter().any(|path| path.contains(due)), "«{asked}» finds {first:?}, not {due}");
    }
}

#[test]
fn a_look_shows_the_headline_of_its_calculation_in_the_readers_units() {
    let book = book();
    let look = |units| {
        let site = render(&book, units);
        let page = site.pages.iter().find(|page| page.path == "questions.html").expect("twenty questions are a sheet");
        let html = page.html(Light::Day);
        let after = html.split("id=\"which-nail\"").nth(1).expect("the question is asked").to_owned();
        after.split("</a></p>").next().unwrap_or_default().to_owned()
    };
    let (imperial, metric) = (look(Units::Imperial), look(Units::Metric));
    // Board 3/4 in or 18 mm, plasterboard 1/2 in or 12.5 mm, hold 3/4 in or 19 mm: 2 in, or 49.5 mm and so a 50 mm nail; by hand.
    assert!(imperial.contains("2<span class=\"un\">in</span>"), "{imperial}");
    assert!(
        metric.contains("50<span class=\"un\">mm</span>") && metric.contains("href=\"fix.html#nail-choice\""),
        "{metric}"
    );
}
