package org.benchtrail.limits;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.measure.Provenance;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.proposals.Agreement;
import org.benchtrail.proposals.ProposalActs;
import org.benchtrail.proposals.ProposalView;
import org.jspecify.annotations.Nullable;

/** The limits that are offered: those published, and those the shop added. */
@ApplicationScoped
@Transactional
public class LimitBook {
    private static final int LONGEST = 300;

    private final SiteLimits rows;
    private final ProposalActs proposals;
    private final AdditionChange additions;
    private final OfferChange offers;
    private final Clock clock;

    LimitBook(SiteLimits rows, ProposalActs proposals, AdditionChange additions, OfferChange offers, Clock clock) {
        this.rows = rows;
        this.proposals = proposals;
        this.additions = additions;
        this.offers = offers;
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
     * Adds a limit. One that allows what another forbids for the same quantity takes two supervisors.
     *
     * @return what was proposed; empty if the limit is there
     * @throws Invalid if it is malformed or its id was ever used
     */
    public Optional<ProposalView> add(Proposed proposed, Actor actor) {
        Permissions.require(Permission.KEEP_LIMITS, actor);
        LimitLibrary.Row row = fresh(proposed);
        if (stricter(row).isPresent()) {
            return Optional.of(proposals.propose(additions, proposed, proposed.source(), actor));
        }
        rows.persist(new SiteLimit(row, now(), actor.account()));
        return Optional.empty();
    }

    /** As {@link #add}, once two agree to it. */
    void add(Proposed proposed, Agreement agreed) {
        rows.persist(new SiteLimit(fresh(proposed), now(), agreed.proposer()));
    }

    /** The limit as a row that is not there yet. */
    LimitLibrary.Row fresh(Proposed proposed) {
        LimitLibrary.Row row = row(proposed);
        LimitLibrary.published().with(row);
        if (rows.findByIdOptional(row.id()).isPresent()) {
            throw new Invalid("id", "A limit with the id " + row.id() + " is here already: give this one its own.");
        }
        return row;
    }

    /** A limit offered for the same quantity that forbids what this one allows. */
    Optional<LimitLibrary.Row> stricter(LimitLibrary.Row row) {
        return library().rows().stream()
                .filter(other -> isOfTheSame(row, other) && row.limit().isLooserThan(other.limit()))
                .findFirst();
    }

    private static boolean isOfTheSame(LimitLibrary.Row row, LimitLibrary.Row other) {
        return !row.id().equals(other.id())
                && row.limit().unit().dimension() == other.limit().unit().dimension()
                && bare(row.quantity()).equals(bare(other.quantity()));
    }

    /** What is measured, however it is written. */
    private static String bare(String quantity) {
        return quantity.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "");
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
        return new LimitLibrary.Row(p.id(), p.quantity(), limit, "-", Provenance.GIVEN, p.note());
    }

    private static void text(Invalid.Collector problems, String field, String typed) {
        problems.require(PlainText.isText(typed), field, PlainText.WHAT_TO_DO);
    }

    /**
     * No longer offered, which takes two supervisors, or offered again, which does if it allows what another forbids; verdicts given
     * by it stay as they are.
     *
     * @return what was proposed; empty if it is done
     */
    public Optional<ProposalView> offer(String id, boolean offered, Actor actor) {
        Permissions.require(Permission.KEEP_LIMITS, actor);
        SiteLimit row = present(id);
        if (!offered || stricter(row.row()).isPresent()) {
            String why = offered ? "To be offered again" : "No longer to be offered";
            return Optional.of(proposals.propose(offers, new OfferChange.Offer(id, offered), why, actor));
        }
        offer(row, true, actor.account());
        return Optional.empty();
    }

    /** As {@link #offer}, once two agree to it. */
    void offer(String id, boolean offered, Agreement agreed) {
        offer(present(id), offered, agreed.proposer());
    }

    private void offer(SiteLimit row, boolean offered, String by) {
        row.retired = offered ? null : now();
        row.retiredBy = offered ? null : by;
    }

    /** A limit of the site, whether it is offered or not. */
    Added own(String id) {
        SiteLimit row = present(id);
        return new Added(row.row(), row.added, row.addedBy, row.retired, row.retiredBy);
    }

    private SiteLimit present(String id) {
        return Optional.of(id)
                .filter(PlainText::isText)
                .flatMap(rows::findByIdOptional)
                .orElseThrow(() -> new NotFound("limit '" + id + "' of the shop"));
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
