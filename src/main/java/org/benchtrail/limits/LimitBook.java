package org.benchtrail.limits;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.jspecify.annotations.Nullable;

/** The limits that are offered: those published, and those the shop added. */
@ApplicationScoped
@Transactional
public class LimitBook {
    private static final int LONGEST = 300;

    private final SiteLimits rows;
    private final Clock clock;

    LimitBook(SiteLimits rows, Clock clock) {
        this.rows = rows;
        this.clock = clock;
    }

    /** A limit of the shop. */
    public record Added(
            LimitLibrary.Row row,
            Instant added,
            String addedBy,
            @Nullable Instant retired,
            @Nullable String retiredBy) {}

    /**
     * A limit as typed.
     *
     * @param lower a number with or without the unit; empty if there is none
     * @param upper the same
     */
    public record Proposed(
            String id, String quantity, String unit, String lower, String upper, String source, String note) {
        public Proposed {
            id = PlainText.line(id);
            quantity = PlainText.line(quantity);
            unit = PlainText.line(unit);
            source = PlainText.line(source);
            note = PlainText.line(note);
        }
    }

    /** Everything that may be judged by now. */
    public LimitLibrary library() {
        LimitLibrary library = LimitLibrary.published();
        for (SiteLimit row : rows.list("retired is null order by id")) {
            library = library.with(row.row());
        }
        return library;
    }

    public List<Added> ofTheShop(Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return rows.list("order by id").stream()
                .map(s -> new Added(s.row(), s.added, s.addedBy, s.retired, s.retiredBy))
                .toList();
    }

    /**
     * Adds a limit.
     *
     * @throws Invalid if it is malformed or its id was ever used
     */
    public LimitLibrary.Row add(Proposed proposed, Actor actor) {
        Permissions.require(Permission.KEEP_LIMITS, actor);
        LimitLibrary.Row row = row(proposed);
        LimitLibrary.published().with(row);
        if (rows.findByIdOptional(row.id()).isPresent()) {
            throw new Invalid("id", "A limit with the id " + row.id() + " is here already: give this one its own.");
        }
        rows.persist(new SiteLimit(row, now(), actor.account()));
        return row;
    }

    private static LimitLibrary.Row row(Proposed p) {
        Invalid.Collector problems = new Invalid.Collector();
        text(problems, "id", p.id());
        text(problems, "unit", p.unit());
        text(problems, "quantity", p.quantity());
        text(problems, "source", p.source());
        text(problems, "note", p.note());
        problems.require(p.unit().length() <= 40 && !p.unit().isBlank(), "unit", "Give the unit, such as V or °C.");
        problems.require(p.note().length() <= LONGEST, "note", "Shorten this to 300 characters.");
        problems.require(
                p.quantity().length() <= LONGEST && !p.quantity().isBlank(),
                "quantity",
                "Say what is measured, and where, in at most 300 characters.");
        problems.require(
                p.source().length() <= LONGEST && !p.source().isBlank(),
                "source",
                "Say where the limit comes from: nameplate, data sheet or policy.");
        problems.throwIfAny();
        var unit = Units.read("unit", p.unit());
        Limit limit = Limit.of(
                p.lower().isBlank()
                        ? null
                        : Quantity.parse("lower", p.lower(), unit).to(unit).value(),
                p.upper().isBlank()
                        ? null
                        : Quantity.parse("upper", p.upper(), unit).to(unit).value(),
                unit,
                p.source());
        return new LimitLibrary.Row(p.id(), p.quantity(), limit, "-", LimitLibrary.Mark.SITE, p.note());
    }

    private static void text(Invalid.Collector problems, String field, String typed) {
        problems.require(PlainText.isText(typed), field, PlainText.WHAT_TO_DO);
    }

    /** No longer offered, or offered again; verdicts given by it stay as they are. */
    public void offer(String id, boolean offered, Actor actor) {
        Permissions.require(Permission.KEEP_LIMITS, actor);
        SiteLimit row = Optional.of(id)
                .filter(PlainText::isText)
                .flatMap(rows::findByIdOptional)
                .orElseThrow(() -> new NotFound("limit '" + id + "' of the shop"));
        row.retired = offered ? null : now();
        row.retiredBy = offered ? null : actor.account();
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
