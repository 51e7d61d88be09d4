//! What `src/narrative/source_words.rs` does, from inside.

use torquill::narrative::source_words::short_citation;

#[test]
fn law_a_publication_is_cited_by_its_authors_and_year() {
    let cited = [
        ("Hill AV (1938) The heat of shortening", "Hill 1938"),
        (
            "Walker SM, Schrodt GR (1974) I segment lengths",
            "Walker & Schrodt 1974",
        ),
        (
            "De Groote F, Kinney AL, Rao AV (2016) Evaluation",
            "De Groote et al. 2016",
        ),
        (
            "Williams MA et al. (2007) Resistance exercise",
            "Williams et al. 2007",
        ),
        (
            "DIN 766:1986 Round steel link chain",
            "DIN 766:1986 Round steel link chain",
        ),
    ];
    for (citation, short) in cited {
        assert_eq!(short_citation(citation), short);
    }
}
