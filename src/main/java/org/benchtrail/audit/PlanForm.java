package org.benchtrail.audit;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditPlan;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.audit.Take;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;

/** A plan as it is typed: a month, or a period of its own; how many of each stratum. */
final class PlanForm {
    private static final int USUAL_REST = 59;

    private PlanForm() {}

    /**
     * The month that goes on or, where that has a lot already, the first one that has none; and what is usually taken: twice what the lots
     * drew at random that were not accepted.
     *
     * @param lastEnd when the latest period that there is a lot of ends
     */
    static FormValues usual(Instant now, Optional<Instant> lastEnd, ZoneId zone, List<AuditLot> doubling) {
        YearMonth goingOn = YearMonth.from(now.atZone(zone));
        YearMonth month = lastEnd.map(
                        end -> YearMonth.from(end.minusNanos(1).atZone(zone)).plusMonths(1))
                .filter(goingOn::isBefore)
                .orElse(goingOn);
        FormValues fill = new FormValues()
                .set("lot", month.toString())
                .set("from", month.atDay(1).atStartOfDay().toString())
                .set("until", month.plusMonths(1).atDay(1).atStartOfDay().toString())
                .set("acceptance", "0")
                .set("otherwise", AuditPlan.Otherwise.REVIEW_ALL.name());
        for (Stratum stratum : Stratum.values()) {
            fill.set("take." + stratum, usual(stratum, doubling).word());
        }
        return fill;
    }

    private static Take usual(Stratum stratum, List<AuditLot> doubling) {
        Take usual = Take.usual(stratum, USUAL_REST);
        for (AuditLot lot : doubling) {
            Take drawn = Objects.requireNonNull(lot.plan().takes().get(stratum));
            usual = drawn.percent() == 100 || usual.isAtLeast(drawn.doubled()) ? usual : drawn.doubled();
        }
        return usual;
    }

    /** @throws Invalid with every field that cannot be read */
    static AuditPlan read(PostedForm form, ZoneId zone) {
        Instant from = moment(form, "from", form.text("from"), zone);
        Instant until = moment(form, "until", form.text("until"), zone);
        Map<Stratum, Take> takes = takes(form);
        Optional<AuditPlan.Otherwise> otherwise = Optional.of(form.text("otherwise"))
                .filter(typed -> !typed.isEmpty())
                .map(AuditPlan.Otherwise::valueOf);
        if (otherwise.isEmpty()) {
            form.refuse("otherwise", "Say what follows if the lot is not accepted.");
        }
        if (form.number("acceptance").isEmpty()) {
            form.refuse("acceptance", "Give a whole number, 0 or more.");
        }
        form.done();
        return new AuditPlan(
                form.text("lot"),
                from,
                until,
                takes,
                form.number("acceptance").getAsInt(),
                otherwise.orElseThrow(),
                form.text("witness"));
    }

    /** By which a form says that exactly this plan was read before it is stated. */
    static String sure(AuditPlan plan) {
        return Hash.sha256(plan.bytes()).hex();
    }

    /** What whoever states a plan reads once more, because nobody changes it afterwards. */
    static List<String> asked(AuditPlan plan, ZoneId zone) {
        List<String> asked = new ArrayList<>();
        asked.add("Lot " + plan.lot() + " takes what ends from " + Moments.text(plan.from(), zone) + " until "
                + Moments.text(plan.until(), zone) + ".");
        String month = YearMonth.from(plan.from().atZone(zone)).toString();
        if (!plan.lot().startsWith(month)) {
            asked.add("The name of the lot is of another month than its beginning, " + month + ".");
        }
        asked.add("Its random part is accepted " + accepted(plan.acceptance()) + ". Otherwise "
                + plan.otherwise().words() + ".");
        asked.add(
                plan.witness().isEmpty()
                        ? "The draw waits for no witness."
                        : "The draw waits for the signature of " + plan.witness() + ".");
        return asked;
    }

    private static String accepted(int defects) {
        return switch (defects) {
            case 0 -> "if no ticket of it has a critical or major defect";
            case 1 -> "if at most 1 ticket of it has a critical or major defect";
            default -> "if at most " + defects + " tickets of it have a critical or major defect";
        };
    }

    /** When the period begins, as far as it can be read. */
    static Optional<Instant> from(FormValues fill, ZoneId zone) {
        return moment(fill.value("from"), zone);
    }

    private static Instant moment(PostedForm form, String field, String typed, ZoneId zone) {
        return moment(typed, zone).orElseGet(() -> {
            form.refuse(field, "Give day and time, such as 2026-11-01T00:00.");
            return Instant.EPOCH;
        });
    }

    private static Optional<Instant> moment(String typed, ZoneId zone) {
        try {
            return Optional.of(LocalDateTime.parse(typed).atZone(zone).toInstant());
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    /** What is taken of each stratum; problems are kept in the form. */
    static Map<Stratum, Take> takes(PostedForm form) {
        Map<Stratum, Take> takes = new EnumMap<>(Stratum.class);
        for (Stratum stratum : Stratum.values()) {
            String field = "take." + stratum;
            try {
                takes.put(stratum, Take.parse(form.text(field)));
            } catch (Invalid e) {
                form.refuse(field, e.problems().get(0).sentence());
            }
        }
        return takes;
    }
}
