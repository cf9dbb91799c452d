package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.integrity.Commitment;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.ForecastCommitted;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.training.ChanceContent;
import org.benchtrail.core.training.ForecastContent;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.Work;
import org.jspecify.annotations.Nullable;

/** Commits forecasts: what binds them goes on the ticket's trail, what they say where its author alone reads it. */
@ApplicationScoped
public class ForecastActs {
    private static final String OTHER = "other";

    private final TicketActs tickets;
    private final Diagnoses diagnoses;
    private final ForecastStore store;
    private final Clock clock;
    private final SecureRandom chance = new SecureRandom();

    ForecastActs(TicketActs tickets, Diagnoses diagnoses, ForecastStore store, Clock clock) {
        this.tickets = tickets;
        this.diagnoses = diagnoses;
        this.store = store;
        this.clock = clock;
    }

    /**
     * A forecast as it was typed.
     *
     * @param other per cent of something else; null for what is left to 100
     */
    record Typed(
            @Nullable ForecastKind kind,
            Map<String, Integer> causes,
            @Nullable Integer other,
            String nextTest) {

        private ForecastContent on(JobSheet sheet, CauseCategory category) {
            new Invalid.Collector()
                    .require(kind != null && kind.isOfCauses(), "forecast", "Say which forecast it is.")
                    .require(
                            causes.keySet().stream()
                                    .allMatch(id -> category.cause(id).isPresent()),
                            "causes",
                            "Choose causes of the list.")
                    .require(
                            nextTest.isEmpty() || category.findings().stream().anyMatch(f -> f.id().equals(nextTest)),
                            "nextTest",
                            "Choose a test of the list.")
                    .throwIfAny();
            int rest =
                    100 - causes.values().stream().mapToInt(Integer::intValue).sum();
            return new ForecastContent(
                    sheet.opened().ticket(),
                    sheet.round(),
                    Objects.requireNonNull(kind),
                    causes,
                    other == null ? Math.max(0, rest) : other,
                    nextTest);
        }
    }

    /** What the trail binds of a forecast, and what is kept of it once that entry stands. */
    private record Made(ForecastCommitted fact, ForecastStore.Kept kept) {}

    /**
     * A forecast of a ticket's causes; something else has what is left to 100.
     *
     * @param version of the sheet that was seen
     * @param causes per cent by id
     * @param nextTest id of a finding, or empty
     * @throws Invalid if it is malformed
     */
    @Transactional
    public Outcome commit(
            TicketNumber number,
            int version,
            ForecastKind kind,
            Map<String, Integer> causes,
            String nextTest,
            Actor actor) {
        return commit(number, version, new Typed(kind, causes, null, nextTest), actor);
    }

    /**
     * @param version of the sheet that was seen
     * @throws Invalid if it is malformed
     */
    @Transactional
    Outcome commit(TicketNumber number, int version, Typed typed, Actor actor) {
        return commit(number, version, sheet -> made(sheet, typed), actor);
    }

    private Outcome commit(TicketNumber number, int version, Function<JobSheet, Made> made, Actor actor) {
        AtomicReference<ForecastStore.Kept> kept = new AtomicReference<>();
        Outcome outcome = tickets.perform(
                number,
                version,
                sheet -> {
                    Made now = made.apply(sheet);
                    kept.set(now.kept);
                    return new Work(List.of(s -> now.fact), null);
                },
                actor);
        if (!outcome.refused()) {
            store.keep(
                    number,
                    outcome.sheet().entries(),
                    actor.account(),
                    clock.instant(),
                    Objects.requireNonNull(kept.get()));
        }
        return outcome;
    }

    /**
     * One chance of one thing, as it was typed.
     *
     * @param about entry of a check or action; null of a finding
     * @param finding id; empty of a check or action
     * @param value of the finding; empty likewise
     * @param percent 0 where none was given
     */
    record Chance(ForecastKind kind, @Nullable Integer about, String finding, String value, int percent) {

        private ChanceContent on(JobSheet sheet, Optional<CauseCategory> category) {
            boolean offered = kind != ForecastKind.FINDING
                    || category.stream()
                            .flatMap(c -> c.findings().stream())
                            .anyMatch(f -> f.id().equals(finding) && f.values().contains(value));
            new Invalid.Collector()
                    .require(offered, "about", "Choose what will be found of the list.")
                    .require((kind == ForecastKind.FINDING) == (about == null), "about", "Choose what it is about.")
                    .throwIfAny();
            return new ChanceContent(
                    sheet.opened().ticket(),
                    sheet.round(),
                    kind,
                    about == null ? finding : String.valueOf(about),
                    about == null ? value : "",
                    percent);
        }

        private ForecastCommitted fact(int round, String commitment) {
            return new ForecastCommitted(kind, about, round, commitment, about == null ? finding : null);
        }
    }

    /**
     * @param version of the sheet that was seen
     * @throws Invalid if it is malformed
     */
    @Transactional
    Outcome commit(TicketNumber number, int version, Chance typed, Actor actor) {
        return commit(number, version, sheet -> made(sheet, typed), actor);
    }

    private Made made(JobSheet sheet, Chance typed) {
        ChanceContent content = typed.on(sheet, diagnoses.category(sheet));
        byte[] salt = Commitment.secret(chance);
        return new Made(
                typed.fact(content.round(), content.commitment(salt).toString()),
                new ForecastStore.Kept(content.round(), content.kind(), content.canonical(), salt, "{}"));
    }

    private Made made(JobSheet sheet, Typed typed) {
        Diagnoses.Dated dated = diagnoses
                .of(sheet)
                .orElseThrow(() -> new Invalid("causes", "There are no causes to choose from: skip this forecast."));
        ForecastContent content = typed.on(sheet, dated.category());
        byte[] salt = Commitment.secret(chance);
        return new Made(
                new ForecastCommitted(
                        content.kind(),
                        null,
                        content.round(),
                        content.commitment(salt).toString()),
                new ForecastStore.Kept(content.round(), content.kind(), content.canonical(), salt, reference(dated)));
    }

    private static String reference(Diagnoses.Dated dated) {
        return dated.diagnosis().ranking().all().stream()
                .map(r -> "\"" + (r.cause().equals(Model.UNLISTED) ? OTHER : r.cause()) + "\":\""
                        + String.format(Locale.ROOT, "%.6f", r.probability()) + "\"")
                .collect(Collectors.joining(",", "{", "}"));
    }
}
