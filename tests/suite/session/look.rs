use torquill::session::{log_file::*, trend::*, schemes::*, method::*, loads::*, oracle::*, status::*, block::*, pyramid};
use torquill::units::*;
#[test]
fn look() {
    for name in ["rising","stalled","gappy"] {
        let text = std::fs::read_to_string(format!("models/logs/{name}.csv")).unwrap();
        let log = read_log(name, &text, ReadOptions::default()).unwrap();
        let t = trend(&log).unwrap();
        println!("== {name}: {} now {:.1} best {:.1} {:.1} weeks ago; n={} recent from {} whole {:+.2} {:?}", t.in_words(), t.one_rm_now().as_kg(), t.sessions[t.best].estimate.one_rm.as_kg(), t.weeks_since_best(), t.sessions.len(), t.recent.from, t.whole.slope_kg_week, t.before.as_ref().map(|b| (b.slope_kg_week, b.weeks())));
        for l in &t.limits { println!("   - {}", l.in_words()); }
        for l in &t.notices { println!("   ! {l}"); }
    }
    let gym = Loading::usual_metric();
    let oracle = from_load_velocity("bench-press", Mass::from_kg(140.0), None).unwrap();
    for (m,_,_) in METHODS.iter().take(4) {
        for months in [2.0, 12.0, 48.0] {
        let mut r = Request::usual("bench-press", *m, Lifter::with_training_months(months), Mass::from_kg(140.0), &gym);
        r.oracle = Some(&oracle);
        if *m == Method::Clusters { r.load = Some(Mass::from_kg(105.0)); r.total_repetitions = Some(12); }
        println!("=== {} {months}", m.name());
        match plan(&r) { Err(e) => println!("{e}"), Ok(p) => {
            for s in &p.draft.sets { println!("  {:?} {} ({:.0} %) x {} rest {} / {} {} {:?} {:?}", s.kind, s.load.in_words(System::Metric), 100.0*s.share, s.repetitions_in_words(), s.rest_within.as_s(), s.rest_after.as_s(), s.intent, s.allowed, s.notes); }
            for l in &p.draft.lowerings { println!("   lower {} {} reserve {:.3}", l.set, l.number, l.reserve); }
            for q in &p.draft.predictions { for s in &q.sets { println!("   {} {:?} stalls {:?} loss {:.2}", q.name, s.repetitions.iter().map(|r| (r.mean_velocity.as_m_s()*100.0).round()/100.0).collect::<Vec<_>>(), s.stalls_at(), s.velocity_loss()); } }
            println!("  {} | {}", p.draft.frequency, p.draft.progression);
            for x in &p.draft.remarks { println!("   * {x}"); }
            println!("  cautions {} spot {:?} {} min {} kg", p.cautions().len(), p.spotting().map(|s| s.spotters), (p.time().as_s()/60.0).round(), p.volume_kg());
        }}}
    }
    let r = Request::usual("bench-press", Method::OverloadedLowering, Lifter::with_training_months(48.0), Mass::from_kg(140.0), &gym);
    for w in block(&r, 4).unwrap().weeks { for d in w.days { println!("week {} day {} {}: {:?}", w.week, d.day, d.title, d.plan.working_sets().map(|s| format!("{}x{}", s.load.total.as_kg(), s.repetitions())).collect::<Vec<_>>()); } }
    let _ = pyramid::PUBLISHED;
}
