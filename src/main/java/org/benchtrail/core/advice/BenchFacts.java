package org.benchtrail.core.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.identify.BenchFigure;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PlanRequirement;
import org.benchtrail.core.method.verify.VerifyRequirement;
import org.jspecify.annotations.Nullable;

/**
 * A result of the bench as facts of a job sheet: the result itself, and what it answers. A part's check fills {@code
 * parts-fit}, a drive that fails or is suspicious asks for {@code data-protected}, a soak time lengthens {@code soak-time-passed}.
 */
public final class BenchFacts {
    /** Calculations that say whether a part fits where it goes. */
    public static final Set<String> PART_CHECKS = Set.of("drive-fit", "module-fit", "supply-size", "ups-load");

    private static final double MINUTES = 60;
    private static final int LONGEST_BASIS = 3_900;

    private BenchFacts() {}

    /**
     * @param input as JSON, so that anybody can calculate again
     * @param action entry number of the action whose part was checked; null if it is about none
     * @param entry number that the result will have on its ticket, so that what it answers can name it
     */
    public static <I extends Record> List<Fact> of(
            Calculation<I> calculation, I values, String input, Result result, @Nullable Integer action, int entry) {
        List<Fact> facts = new ArrayList<>();
        facts.add(attached(calculation, input, result));
        String named = calculation.title() + ": " + result.judgement().words();
        if (action != null && PART_CHECKS.contains(calculation.id())) {
            String basis = named + ". " + result.judgement().reason();
            fit(result).ifPresent(fit -> facts.add(new PartFitChecked(action, fit, cut(basis), entry)));
        }
        if (calculation.id().equals("drive-health") && result.cautions().contains("DATA_LOSS")) {
            facts.add(new FindingRecorded(cut(named + ". " + result.judgement().reason()), true));
        }
        if (values instanceof Soak.Input) {
            facts.add(soak(result));
        }
        return facts;
    }

    /**
     * What a result means for the ticket that it is attached to, and which requirement it meets, in one sentence.
     *
     * @param part whether it is attached to a planned action's part
     */
    public static String meaning(String calculation, Result result, boolean part) {
        if (part && PART_CHECKS.contains(calculation)) {
            String answers = "the requirement " + named(PlanRequirement.PARTS_FIT);
            return fit(result)
                    .map(fit -> fit == Fit.DOES_NOT_FIT
                            ? "Attached, it says that this action's part does not fit: " + answers + " stays unmet."
                            : "Attached, it says that this action's part " + fit.words() + ", which answers " + answers
                                    + " for it.")
                    .orElse("Whether this action's part fits is left open: " + answers + " stays unmet.");
        }
        if (calculation.equals("drive-health") && result.cautions().contains("DATA_LOSS")) {
            return "Attached, it is recorded as a failing drive: the requirement "
                    + named(IdentifyRequirement.DATA_PROTECTED) + " then asks for a backup before any other step.";
        }
        if (calculation.equals("soak")) {
            return "Attached, it says how long the fix must run clean for the requirement "
                    + named(VerifyRequirement.SOAK_TIME_PASSED) + ", where that is longer than policy asks for.";
        }
        return "Attached, it is evidence"
                + (result.judgement().level() == Level.UNDECIDED ? ", which settles nothing yet" : "")
                + ": it meets the requirement " + named(IdentifyRequirement.EVIDENCE_ATTACHED) + ".";
    }

    private static String named(Requirement requirement) {
        return "\u201c" + requirement.row().title() + "\u201d";
    }

    private static BenchResultAttached attached(Calculation<?> calculation, String input, Result result) {
        return new BenchResultAttached(
                calculation.id(),
                calculation.version(),
                calculation.title(),
                input,
                result.judgement().level(),
                result.judgement().words(),
                result.judgement().reason(),
                result.figures().stream()
                        .map(f -> new BenchFigure(f.name(), f.text(), f.unit()))
                        .toList());
    }

    /** Empty where the bench could not decide. */
    private static Optional<Fit> fit(Result result) {
        return switch (result.judgement().level()) {
            case GOOD -> Optional.of(Fit.FITS);
            case CAREFUL -> Optional.of(Fit.FITS_WITH_WARNING);
            case BAD -> Optional.of(Fit.DOES_NOT_FIT);
            case UNDECIDED, NONE -> Optional.empty();
        };
    }

    private static Fact soak(Result result) {
        double hours = result.figures().get(0).value();
        int needed = (int) Math.min(525_600, Math.max(1, Math.ceil(hours * MINUTES)));
        return new SoakTimeReckoned(needed, result.judgement().reason());
    }

    private static String cut(String text) {
        return text.length() <= LONGEST_BASIS ? text : text.substring(0, LONGEST_BASIS) + "\u2026";
    }
}
