package org.benchtrail.core.method;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What is recorded to plan the fix and carry it out. */
public sealed interface PlanFact extends Fact {
    @Override
    default Step step() {
        return Step.PLAN;
    }

    /**
     * One thing that will be done.
     *
     * @param what what is done
     * @param effect what it is expected to bring about
     * @param impact who is down meanwhile, and for how long
     * @param wayBack how to undo it; empty only if irreversible
     * @param touchesStorage whether it could lose data
     * @param severalDevices whether it reaches beyond the one device
     * @param cost in the site's currency, decimal; null if it costs nothing
     * @param part the replacement part, if any
     * @param cautions what must be acknowledged before it is carried out
     */
    record ActionPlanned(
            String what,
            String effect,
            String impact,
            String wayBack,
            boolean irreversible,
            boolean touchesStorage,
            boolean severalDevices,
            boolean highRisk,
            @Nullable String cost,
            @Nullable String part,
            Set<Caution> cautions)
            implements PlanFact {
        public ActionPlanned {
            Texts t = new Texts();
            what = t.required("what", what, Texts.PARAGRAPH, "Say what will be done.");
            effect = t.required("effect", effect, Texts.PARAGRAPH, "Say what it should bring about.");
            impact = t.required("impact", impact, Texts.PARAGRAPH, "Say who is down meanwhile and for how long.");
            wayBack = t.optional("wayBack", wayBack, Texts.PARAGRAPH);
            t.require(irreversible || !wayBack.isEmpty(), "wayBack", "Say how to undo it, or mark it irreversible.");
            cost = cost == null || cost.isBlank() ? null : cost.strip().replace(',', '.');
            t.require(
                    cost == null || cost.matches("\\d{1,9}(\\.\\d{1,2})?"),
                    "cost",
                    "Write the cost as a plain amount such as 84.50.");
            part = t.orNull("part", part, Texts.LINE);
            cautions = Texts.cautions(cautions);
            t.done();
        }

        /** With more cautions. */
        public ActionPlanned with(Set<Caution> more) {
            return new ActionPlanned(
                    what,
                    effect,
                    impact,
                    wayBack,
                    irreversible,
                    touchesStorage,
                    severalDevices,
                    highRisk,
                    cost,
                    part,
                    Texts.union(cautions, more));
        }

        public BigDecimal costAmount() {
            return cost == null ? BigDecimal.ZERO : new BigDecimal(cost);
        }
    }

    /** The maker's instructions: the reference, or why there are none for this. */
    record MakerConsulted(boolean applicable, String text) implements PlanFact {
        public MakerConsulted {
            Texts t = new Texts();
            text = t.required(
                    "text", text, Texts.PARAGRAPH, "Name the maker's instructions that were read, or why none apply.");
            t.done();
        }

        @Override
        public boolean lateAllowed() {
            return true;
        }
    }

    enum Fit {
        FITS("fits"),
        FITS_WITH_WARNING("fits with a warning"),
        DOES_NOT_FIT("does not fit");

        private final String words;

        Fit(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** A replacement part held against the place it goes to. */
    record PartFitChecked(int action, Fit fit, String basis) implements PlanFact {
        public PartFitChecked {
            Texts t = new Texts();
            t.require(fit != null, "fit", "Say whether the part fits.");
            basis = t.required("basis", basis, Texts.PARAGRAPH, "Say what was compared: interface, size, rating.");
            t.done();
        }
    }

    /** A part that failed its fit check, let through by somebody else with a reason. */
    record PartOverrideApproved(int action, String reason) implements PlanFact {
        public PartOverrideApproved {
            Texts t = new Texts();
            reason = t.required("reason", reason, Texts.PARAGRAPH, "Say why the part may be used all the same.");
            t.done();
        }
    }

    /** The plan as it stands, approved by somebody else; the actions are those listed by entry number. */
    record PlanApproved(List<Integer> actions, String note) implements PlanFact {
        public PlanApproved {
            Texts t = new Texts();
            actions = actions == null ? List.of() : List.copyOf(actions);
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.require(!actions.isEmpty(), "actions", "Name the actions that are approved.");
            t.done();
        }
    }

    record PlanDeclined(String reason) implements PlanFact {
        public PlanDeclined {
            Texts t = new Texts();
            reason = t.required("reason", reason, Texts.PARAGRAPH, "Say what must change before it can be approved.");
            t.done();
        }
    }

    enum Settlement {
        CARRIED_OUT("carried out"),
        FAILED("failed"),
        NOT_NEEDED("not needed");

        private final String words;

        Settlement(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    record ActionSettled(int action, Settlement settlement, String note) implements PlanFact {
        public ActionSettled {
            Texts t = new Texts();
            t.require(settlement != null, "settlement", "Say whether it was carried out, failed, or is not needed.");
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.require(
                    settlement == Settlement.CARRIED_OUT || !note.isEmpty(),
                    "note",
                    "Say what went wrong, or why it is not needed.");
            t.done();
        }
    }
}
