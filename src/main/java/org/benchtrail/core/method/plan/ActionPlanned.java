package org.benchtrail.core.method.plan;

import java.math.BigDecimal;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

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
 * @param usesPart whether it uses a part; null in entries from before that was asked
 * @param against why it is not what its words say, where they speak for a yes that was answered with no; null if they do not
 */
public record ActionPlanned(
        @FreeText String what,
        @FreeText String effect,
        @FreeText String impact,
        @FreeText String wayBack,
        Boolean irreversible,
        Boolean touchesStorage,
        boolean severalDevices,
        boolean highRisk,
        @Nullable String cost,
        @Nullable String part,
        Set<Caution> cautions,
        @Later @Nullable Boolean usesPart,
        @Later @FreeText @Nullable String against)
        implements PlanFact {
    public ActionPlanned {
        FieldChecks t = new FieldChecks();
        what = t.required("what", what, FieldChecks.PARAGRAPH, "Say what will be done.");
        effect = t.required("effect", effect, FieldChecks.PARAGRAPH, "Say what it should bring about.");
        impact = t.required("impact", impact, FieldChecks.PARAGRAPH, "Say who is down meanwhile and for how long.");
        wayBack = t.optional("wayBack", wayBack, FieldChecks.PARAGRAPH);
        t.require(irreversible != null, "irreversible", "Say whether it is irreversible: yes or no.");
        t.require(touchesStorage != null, "touchesStorage", "Say whether it touches stored data: yes or no.");
        t.require(
                Boolean.TRUE.equals(irreversible) || !wayBack.isEmpty(),
                "wayBack",
                "Say how to undo it, or mark it irreversible.");
        cost = cost == null || cost.isBlank() ? null : plainAmount(cost);
        t.require(
                cost == null || cost.matches("\\d{1,9}(\\.\\d{1,2})?"),
                "cost",
                "Write the cost as a plain amount such as 84.50.");
        part = t.orNull("part", part, FieldChecks.LINE);
        cautions = EnumCopies.set(Caution.class, cautions);
        against = t.orNull("against", against, FieldChecks.PARAGRAPH);
        t.done();
    }

    /** One that uses a part if it names one, and whose answers its words bear out. */
    public ActionPlanned(
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
            Set<Caution> cautions) {
        this(
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
                cautions,
                part != null && !part.isBlank(),
                null);
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
                EnumCopies.union(Caution.class, cautions, more),
                usesPart,
                against);
    }

    /** Without the sign or the code of the currency, which is the site's; a comma before the cents becomes a point. */
    private static String plainAmount(String typed) {
        return typed.strip()
                .replaceAll("^(\\p{Sc}|[A-Z]{3}) ?|\\s?(\\p{Sc}|[A-Z]{3})$", "")
                .replace(',', '.');
    }

    public BigDecimal costAmount() {
        return cost == null ? BigDecimal.ZERO : new BigDecimal(cost);
    }

    /**
     * The action with that entry number.
     *
     * @throws Invalid on {@code action} if there is none in this round
     */
    static StandingFact<ActionPlanned> ofThisRound(JobSheet sheet, int action) {
        StandingFact<ActionPlanned> planned = sheet.at(action, ActionPlanned.class, "action");
        if (planned.round() != sheet.round()) {
            throw new Invalid("action", "That action belongs to an earlier round: plan it anew.");
        }
        return planned;
    }

    /** It says outright whether it uses a part, and why not where its words say otherwise. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        Invalid.Collector problems = new Invalid.Collector()
                .require(usesPart != null, "usesPart", "Say whether it uses a part: yes or no.")
                .require(!Boolean.TRUE.equals(usesPart) || part != null, "part", "Name the part.")
                .require(
                        !Boolean.FALSE.equals(usesPart) || part == null,
                        "usesPart",
                        "A part is named: say that it uses one, or leave the part out.");
        if (against == null && usesPart != null) {
            ActionQuestion.contradicted(this)
                    .forEach(q -> problems.require(
                            false,
                            q.field(),
                            "Its words say that it " + q.words() + ": answer yes, or say under 'against' why not."));
        }
        problems.throwIfAny();
        return List.of();
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    /** One that was settled, or belongs to an earlier round, stays as it is. */
    @Override
    public List<Missing> keptFrom(JobSheet sheet, StandingFact<?> self, @Nullable Fact replacement, Actor actor) {
        boolean done =
                self.round() != sheet.round() || sheet.settlement(self.entry()).isPresent();
        if (done) {
            return Missing.reliedOn();
        }
        return replacement instanceof ActionPlanned other
                ? CautionsAcknowledged.kept(cautions, other.cautions)
                : List.of();
    }

    @Override
    public Fact completedBy(ServerKnowledge server) {
        Set<Caution> raised = EnumSet.noneOf(Caution.class);
        raised.addAll(Caution.raisedBy(part == null ? what : what + "\n" + part));
        raised.addAll(Caution.toldBy(effect + "\n" + wayBack));
        raised.addAll(server.cautionsOfRepair());
        raised.addAll(Caution.usualFor(server.category()));
        return with(raised);
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                what,
                Told.labelled("effect", effect),
                Told.labelled("impact", impact),
                Told.labelled("way back", wayBack),
                Boolean.TRUE.equals(irreversible) ? "irreversible" : "",
                Boolean.TRUE.equals(touchesStorage) ? "touches storage" : "",
                severalDevices ? "reaches beyond the one device" : "",
                highRisk ? "of high risk" : "",
                cost == null ? "" : Told.labelled("cost", cost),
                part == null ? "" : Told.labelled("part", part),
                Told.labelled("cautions", Told.list(cautions, Caution::title)));
    }
}
