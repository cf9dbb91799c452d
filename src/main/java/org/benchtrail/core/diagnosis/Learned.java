package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A version of a category's figures. Each ticket names the version it was ranked with, so that old explanations hold.
 *
 * @param category with learned weights, tables and backgrounds
 * @param unlisted prior of the cause that is not in the list, for {@link ModelSettings#withUnlisted}
 * @param cases accepted cases behind it, decayed and capped
 * @param support what stands behind each figure
 */
public record Learned(CauseCategory category, double unlisted, double cases, Support support) {
    private static final double ENOUGH_CASES = 20;
    private static final double PRIOR_SHIFT = 0.05;
    private static final double TABLE_SHIFT = 0.15;

    /** A category as written, before anything was learned. */
    public static Learned practice(CauseCategory category) {
        return new Learned(category, ModelSettings.STANDARD.unlisted(), 0, Support.PRACTICE);
    }

    /**
     * Where the prior of a cause comes from. A prior is a share: cases of other causes move it as well, so that with any case
     * in the category it is no longer the catalogue's alone.
     */
    public Backing.Origin priorOrigin(String cause) {
        Backing.Origin own = support.prior(cause).origin();
        return own == Backing.Origin.PRACTICE && cases > 0 ? Backing.Origin.BOTH : own;
    }

    /** What every percentage from this version carries. */
    public String label() {
        return cases < ENOUGH_CASES
                ? "starter figures, not yet learned here"
                : "learned from " + Math.round(cases) + " accepted cases";
    }

    /**
     * A figure that moved.
     *
     * @param finding and value are empty for the prior of a cause
     */
    public record Shift(String cause, String finding, String value, double before, double after) {
        /** Whether it waits for a supervisor. */
        public boolean needsApproval() {
            return Math.abs(after - before) > (finding.isEmpty() ? PRIOR_SHIFT : TABLE_SHIFT);
        }
    }

    /** Every prior and table figure that differs from the version in force, for the supervisor to see. */
    public List<Shift> shiftsFrom(Learned inForce) {
        ModelSettings plain = ModelSettings.STANDARD.withoutClamp();
        Model before = new Model(inForce.category, plain.withUnlisted(inForce.unlisted));
        Model after = new Model(category, plain.withUnlisted(unlisted));
        List<Shift> shifts = new ArrayList<>();
        for (Cause c : category.causes()) {
            if (inForce.has(c.id())) {
                shift(shifts, c.id(), "", "", before.prior(before.index(c.id())), after.prior(after.index(c.id())));
                tables(shifts, c, before, after);
            }
        }
        int a = before.size();
        shift(shifts, Model.UNLISTED, "", "", before.prior(a), after.prior(after.size()));
        return shifts;
    }

    private boolean has(String cause) {
        return category.causes().stream().anyMatch(c -> c.id().equals(cause));
    }

    private void tables(List<Shift> shifts, Cause c, Model before, Model after) {
        Map<String, Finding> known = new HashMap<>();
        before.category().findings().forEach(f -> known.put(f.id(), f));
        for (Finding f : category.findings()) {
            Finding old = known.get(f.id());
            if (old != null && old.values().equals(f.values())) {
                double[] was = before.table(before.findingIndex(f.id())).row(before.index(c.id()), before.size());
                double[] is = after.table(after.findingIndex(f.id())).row(after.index(c.id()), after.size());
                for (int v = 0; v < is.length; v++) {
                    shift(shifts, c.id(), f.id(), f.values().get(v), was[v], is[v]);
                }
            }
        }
    }

    private static void shift(List<Shift> into, String cause, String f, String v, double before, double after) {
        if (before != after) {
            into.add(new Shift(cause, f, v, before, after));
        }
    }
}
