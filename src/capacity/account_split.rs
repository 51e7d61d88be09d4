//! Splits a change of capacity at one place into an exact account.
//!
//! In: the [`Equilibrium`] before and after. Out: [`Account`]; the mathematics stands at [`account`].

use super::account::{Account, JointLimit, Lever, MuscleShare};
use super::equilibrium::Equilibrium;
use super::stretch::{Stretch, joint_of, joint_rows, outside_lever};

/// Splits a change of capacity over muscles and their factors, the load's lever, supports, limbs and joints.
///
/// ```text
/// equilibrium       0 = λ·h_j + T_j,    T_j = Σ_i r_ij·F_i + G_j + P_j + Σ_k c_kj·R_k        every row j
/// strong duality    λ = Σ_j u_j·T_j,    Σ_j u_j·h_j = −1
/// over a stretch    Δλ = Σ_j ū_j·ΔT_j + ½·Σ_j (λ·u′_j + λ′·u_j)·Δh_j
/// lever             ½·(λ·u′_j + λ′·u_j)·ΔD_j,   D_j = h_j + Σ_k c_kj·R_k/λ                   every joint j
/// muscle            ū·Δ(r_i·F_i) = Σ_f φ_if,   φ_if  Shapley share of factor f in (ū·r_i)·F_i
/// ```
/// | symbol      | meaning                                                              | unit        |
/// | ----------- | -------------------------------------------------------------------- | ----------- |
/// | `λ`         | capacity; a dash marks the value after                               | N, N·m      |
/// | `u_j`       | dual value: capacity per N·m more at row j; 0 where the row does not limit; `ū` mean of before and after | 1/m, – |
/// | `h_j`       | load's torque at row j per unit of capacity: its lever               | m, –        |
/// | `r_ij, F_i` | moment arm and force of muscle i, `F_i` as [`super::ForceTerms`] has it     | m, N        |
/// | `G_j, P_j`  | limbs' weight, passive torque of the joint                           | N·m         |
/// | `R_k, c_kj` | reactions of the surroundings; rows of balances and cones are rows like those of joints | N, N·m |
/// | `D_j`       | lever of the load with all pushes at joint j, each in its own state         | m, –        |
///
/// **Shape.** The parts add up to `λ′ − λ` whatever changed, by algebra (product rule with means; the sum of
/// `T̄·Δu` is the lever's part because `u·h = −1` on both sides). A muscle at an activation between 0 and 1, and a
/// reaction inside its cone, have no weight: the optimum trades them freely. A push counts in the lever that it gives
/// the load, so a joint's part is the change between two levers that the poses have, times the price of a metre; what only moves
/// a push inside its cone cancels over the joints. What load and surroundings give beyond that (a body's own weight in
/// balances and cones) is the part of the supports. With one joint, `u = 1/h` and
/// every part is force × arm over the load's lever. Where other conditions bind after than before (another joint
/// gives way), the change is followed on the straight line of all factors, the programme solved where the
/// binding changes, and the parts of the stretches are added: the Aumann-Shapley split along that line.
/// **Source.** Duality of linear programmes: Dantzig 1963; split in blocks: Shapley 1953, Owen 1977, Math. Econ.
/// Game Theory:76-88; along a line: Aumann & Shapley 1974, Values of Non-Atomic Games (all from memory).
/// **Differs.** Where the programme has another shape after (a reaction that had no cone gets one), or a straight
/// limb bears [`super::BOUNDLESS`], what is not explained stands in `rest`. **Fails.** Never.
#[must_use]
pub fn account(before: &Equilibrium, after: &Equilibrium) -> Account {
    let mut account = blank(before, after);
    if !before.is_shaped_like(after) {
        account.rest = account.change();
        return account;
    }
    let between = turning_points(before, after);
    let all: Vec<&Equilibrium> = std::iter::once(before)
        .chain(&between)
        .chain(std::iter::once(after))
        .collect();
    for pair in all.windows(2) {
        add_stretch(&mut account, pair[0], pair[1]);
    }
    account.stretches = 1 + between.len() / 2;
    account
}

/// How often the way is halved to find where other conditions begin to bind: to 1/65536 of it.
const HALVINGS: usize = 16;

/// Pairs of mixtures around every place of the way where other conditions begin to bind; none where the
/// programme cannot be followed: then the whole way counts as one stretch.
fn turning_points(before: &Equilibrium, after: &Equilibrium) -> Vec<Equilibrium> {
    let mut way = vec![before.clone()];
    if follow(before, after, HALVINGS, &mut way).is_none() {
        return Vec::new();
    }
    way.push(after.clone());
    let turns = |index: &usize| {
        !(way[index - 1].binds_like(&way[*index]) && way[*index].binds_like(&way[index + 1]))
    };
    let kept: Vec<usize> = (1..way.len() - 1).filter(turns).collect();
    kept.into_iter().map(|index| way[index].clone()).collect()
}

/// Adds mixtures between two to the way until neighbours bind alike or are close.
fn follow(
    low: &Equilibrium,
    high: &Equilibrium,
    halvings: usize,
    way: &mut Vec<Equilibrium>,
) -> Option<()> {
    if halvings == 0 || low.binds_like(high) {
        return Some(());
    }
    let middle = low.halfway(high).ok()?;
    follow(low, &middle, halvings - 1, way)?;
    way.push(middle.clone());
    follow(&middle, high, halvings - 1, way)
}

/// The account before anything is split.
fn blank(before: &Equilibrium, after: &Equilibrium) -> Account {
    let both = [before, after];
    let comparable = before.is_shaped_like(after);
    let muscles = before.names.iter().enumerate().filter(|_| comparable);
    let own = |of| Stretch {
        before: of,
        after: of,
    };
    let share = |(index, name): (usize, &String)| MuscleShare {
        name: name.clone(),
        parts: [0.0; 7],
        arms: by_axis(both, |of, row| of.muscles[index].arms_m[row]),
        gain: both.map(|of| own(of).gain(of, index)),
        force_n: both.map(|of| of.force_n(index)),
        activation: both.map(|of| of.activation(index)),
        fibres: both.map(|of| of.fibres(index)),
        terms: both.map(|of| of.terms[index]),
    };
    Account {
        capacity: both.map(Equilibrium::capacity),
        muscles: muscles.map(share).collect(),
        levers: if comparable {
            by_axis(both, |of, row| of.sides * outside_lever(of, row))
        } else {
            Vec::new()
        },
        sides: before.sides,
        has_pushes: before
            .pose
            .reactions
            .iter()
            .any(|reaction| reaction.column.iter().any(|torque| *torque != 0.0)),
        supports: 0.0,
        limbs: 0.0,
        passive_joints: 0.0,
        rest: 0.0,
        weights: both.map(|of| (0..joint_rows(of)).map(|row| of.weight(row)).collect()),
        limits: both.map(limits),
        stretches: 1,
    }
}

/// A length about every axis before and after, each as its own pose has it; still without a part.
fn by_axis(both: [&Equilibrium; 2], length: impl Fn(&Equilibrium, usize) -> f64) -> Vec<Lever> {
    let rows = 0..joint_rows(both[0]);
    let lever = |row: usize| Lever {
        dof: both[0].pose.coordinates[row].dof,
        length_m: both.map(|of| length(of, row)),
        part: 0.0,
    };
    rows.map(lever).collect()
}

/// What a share more strength at every joint would add, the greatest first.
fn limits(of: &Equilibrium) -> Vec<JointLimit> {
    let mut found: Vec<JointLimit> = Vec::new();
    for row in 0..joint_rows(of) {
        let muscles = of.muscles.iter().enumerate();
        let torque: f64 = muscles.map(|(i, m)| m.arms_m[row] * of.force_n(i)).sum();
        let share = of.weight(row) * torque;
        let joint = joint_of(of, row);
        match found.iter_mut().find(|limit| limit.joint == joint) {
            Some(limit) => limit.share += share,
            None => found.push(JointLimit { joint, share }),
        }
    }
    let all: f64 = found.iter().map(|limit| limit.share.abs()).sum();
    for limit in &mut found {
        limit.share = if all > 0.0 {
            limit.share.abs() / all
        } else {
            0.0
        };
    }
    found.sort_by(|a, b| b.share.total_cmp(&a.share).then(a.joint.cmp(&b.joint)));
    found
}

/// Adds the exact parts of one stretch.
fn add_stretch(account: &mut Account, before: &Equilibrium, after: &Equilibrium) {
    let stretch = Stretch { before, after };
    for (index, share) in account.muscles.iter_mut().enumerate() {
        stretch.add_muscle(share, index);
    }
    let mut levers = 0.0;
    for (row, lever) in account.levers.iter_mut().enumerate() {
        let part = stretch.whole_lever(row);
        lever.part += part;
        levers += part;
    }
    account.limbs += stretch.limbs();
    account.passive_joints += (0..joint_rows(before))
        .map(|row| stretch.mean(row) * (after.joints_nm[row] - before.joints_nm[row]))
        .sum::<f64>();
    account.supports += stretch.outside() - levers;
    account.rest += stretch.boundless();
}
