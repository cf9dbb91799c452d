package org.benchtrail.core.learning;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.SheetReader;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.ClosedCase;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.jspecify.annotations.Nullable;

/** Makes a case of a closed ticket: the one place where the words of the method become those of the catalogue. */
public final class CaseOfTicket {
    private final JobSheet sheet;
    private final Collection<CauseCategory> catalogue;
    private final SheetReader reader;

    private CaseOfTicket(JobSheet sheet, Collection<CauseCategory> catalogue, SheetReader reader) {
        this.sheet = sheet;
        this.catalogue = catalogue;
        this.reader = reader;
    }

    /**
     * @param catalogue every category in force
     * @param reader what is known beside the sheet
     * @throws Invalid on {@code ticket} if it has nothing to teach, with the reason
     */
    public static TicketCase of(JobSheet sheet, Collection<CauseCategory> catalogue, SheetReader reader) {
        return new CaseOfTicket(sheet, catalogue, reader).made();
    }

    private TicketCase made() {
        require(sheet.course().standing() == Standing.CLOSED, "Close the ticket first.");
        CauseNamed named =
                sheet.latest(CauseNamed.class).map(StandingFact::fact).orElseThrow(() -> refused("No cause is named."));
        require(named.sureness() != Sureness.PRESUMED, "Its cause is only presumed, which teaches nothing.");
        String assignee = sheet.course().assignee();
        if (assignee == null) {
            throw refused("Nobody had this ticket when it was closed.");
        }
        CauseCategory category = category(named);
        int settled = settled();
        return new TicketCase(
                category.id(),
                now(named.causeId() == null ? Model.UNLISTED : named.causeId()),
                named.cause(),
                assignee,
                site(sheet.opened().place()),
                named.sureness() == Sureness.MEASURED
                        ? ClosedCase.Confirmation.MEASURED
                        : ClosedCase.Confirmation.REPAIRED,
                Objects.requireNonNull(sheet.course().closed()),
                SeenOnTicket.of(sheet, category, settled, reader),
                shown(settled).orElse(null));
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw refused(otherwise);
        }
    }

    private static Invalid refused(String sentence) {
        return new Invalid("ticket", sentence);
    }

    /** That of the named cause; for a cause of no entry, that of the ticket. */
    private CauseCategory category(CauseNamed named) {
        if (named.causeId() != null) {
            return catalogue.stream()
                    .filter(c -> c.cause(named.causeId()).isPresent())
                    .findFirst()
                    .orElseThrow(() -> refused("The catalogue in force has no cause '" + named.causeId() + "'."));
        }
        return catalogue.stream()
                .filter(c -> c.id().equals(sheet.opened().category().catalogue()))
                .findFirst()
                .orElseThrow(() -> refused("The catalogue has no category for '"
                        + sheet.opened().category().title() + "', and the cause is none of its entries."));
    }

    /** A place is written as site, then where on it; what stands before the first comma is the site. */
    private static @Nullable String site(String place) {
        int comma = place.indexOf(',');
        return comma <= 0 ? null : place.substring(0, comma).strip().toLowerCase(Locale.ROOT);
    }

    /** Entry that settled the cause: the last round's supporting result, or else the first thing done to the device in it. */
    private int settled() {
        return sheet.latest(ResultRecorded.class, r -> r.round() == sheet.round() && supportsTheActive(r))
                .map(StandingFact::entry)
                .or(() -> sheet.facts().stream()
                        .filter(f -> f.round() == sheet.round() && f.fact().changesDevice())
                        .findFirst()
                        .map(StandingFact::entry))
                .orElseGet(() -> sheet.latest(CauseNamed.class).orElseThrow().entry());
    }

    private boolean supportsTheActive(StandingFact<ResultRecorded> result) {
        if (result.fact().outcome() != CheckOutcome.SUPPORTS) {
            return false;
        }
        int theory = sheet.choice().map(c -> c.fact().theory()).orElse(-1);
        return sheet.latest(CheckPlanned.class, c -> c.entry() == result.fact().check())
                .filter(c -> c.fact().theory() == theory)
                .isPresent();
    }

    /** The id that a cause has in the catalogue now. */
    private String now(String id) {
        return catalogue.stream()
                .flatMap(c -> c.cause(id).stream())
                .map(Cause::id)
                .findFirst()
                .orElse(id);
    }

    /** The last ranking of the server's before that entry. */
    private Optional<TicketCase.ShownRanking> shown(int settled) {
        return sheet.latest(
                        TheoriesRanked.class,
                        r -> r.entry() < settled && stated(r).isPresent())
                .flatMap(this::stated);
    }

    /** Empty for a ranking that a technician wrote. */
    private Optional<TicketCase.ShownRanking> stated(StandingFact<TheoriesRanked> ranking) {
        var causes = ranking.fact().causes();
        Integer catalogue = ranking.fact().catalogue();
        if (causes == null || catalogue == null) {
            return Optional.empty();
        }
        List<TicketCase.Stated> stated = causes.stream()
                .map(c -> new TicketCase.Stated(now(c.causeId()), c.probability()))
                .toList();
        return Optional.of(new TicketCase.ShownRanking(ranking.entry(), catalogue, stated));
    }
}
