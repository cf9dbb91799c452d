package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.Verification;

/** What can be read of one ticket. Each query is one transaction, so that what belongs together fits together. */
@ApplicationScoped
@Transactional
public class TicketQueries {
    private static final String FILE = FactKinds.name(AttachmentAdded.class);
    private static final Actor SERVER = new Actor(Stamp.SERVER, "The server", Set.of());

    private final Tickets tickets;
    private final Requesters requesters;
    private final KeptFiles files;
    private final Continuity continuity;
    private final Sights sights;

    TicketQueries(Tickets tickets, Requesters requesters, KeptFiles files, Continuity continuity, Sights sights) {
        this.sights = sights;
        this.tickets = tickets;
        this.requesters = requesters;
        this.files = files;
        this.continuity = continuity;
    }

    /**
     * A ticket: its sheet, and what stands outside the trail.
     *
     * @param fault why nothing can be recorded on it; empty if its record holds
     */
    public record Whole(
            TicketNumber number, TicketLine line, JobSheet sheet, String fault, String requester, String contact) {}

    /**
     * A ticket as that person may see it.
     *
     * @throws RecordBroken if there is an entry that cannot be read, and so no sheet
     * @throws ForecastFirst if they are to forecast first on another ticket of the device
     */
    public Whole ticket(TicketNumber number, Actor actor) {
        return traced(number, actor).ticket();
    }

    /** The same as an act has just left it, in the act's own transaction: what the act read and wrote is not read again. */
    public Whole after(Outcome outcome, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        TicketNumber number = outcome.number();
        sights.passToOther(number, outcome.sheet(), actor);
        return whole(tickets.present(number), Sight.shown(outcome.sheet(), actor), "");
    }

    private Whole whole(Ticket row, JobSheet sheet, String fault) {
        Requester requester = requesters.findById(row.requester);
        return new Whole(row.number(), TicketLine.of(row), sheet, fault, requester.name, requester.contact);
    }

    /** A ticket and the trail that it was replayed from. */
    public record Traced(Whole ticket, List<TrailEntry> trail) {}

    /** @throws RecordBroken as {@link #ticket} */
    public Traced traced(TicketNumber number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        Ticket row = tickets.present(number);
        SheetRecord record = continuity.read(number, actor);
        sights.passToOther(number, record.sheet(), actor);
        return new Traced(whole(row, Sight.shown(record.shown(), actor), record.fault()), shown(record, actor));
    }

    /** The entries, but for rankings that the viewer may not read yet: of those there is when, what kind, and the hash. */
    private static List<TrailEntry> shown(SheetRecord record, Actor viewer) {
        JobSheet sheet = record.sheet();
        List<TrailEntry> all = record.stored().entries();
        return sheet == null || Sight.of(sheet, viewer) instanceof Sight.Open
                ? all
                : all.stream().map(TicketQueries::veiled).toList();
    }

    private static TrailEntry veiled(TrailEntry entry) {
        return entry.readable().filter(e -> e.fact().tellsRanking()).isPresent() ? entry.veiled() : entry;
    }

    /** A ticket that can only be told from its row, and why. */
    public record Broken(
            String number, String title, String device, String place, String fault, boolean newer, boolean mending) {}

    public Broken broken(TicketNumber number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        Ticket row = tickets.present(number);
        SheetRecord record = continuity.read(number, actor);
        return new Broken(
                number.toString(),
                row.title,
                row.device,
                row.place,
                record.fault(),
                record.newer(),
                Permissions.allow(Permission.MEND_TRAILS, actor));
    }

    /** @throws RecordBroken if the trail does not hold; an alarm is recorded */
    public JobSheet sound(TicketNumber number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return continuity.read(number, actor).sound();
    }

    /** The sheets of several tickets, of those whose record holds, by number. */
    public Map<TicketNumber, JobSheet> sound(Collection<TicketNumber> numbers, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return numbers.isEmpty()
                ? Map.of()
                : continuity.read(numbers, actor).stream()
                        .filter(record -> record.fault().isEmpty())
                        .collect(Collectors.toMap(SheetRecord::number, SheetRecord::sound));
    }

    /** For the server itself: the sheet, which nobody changes until the transaction ends; empty if the record does not hold. */
    public Optional<JobSheet> locked(TicketNumber number) {
        tickets.locked(number);
        SheetRecord record = continuity.read(number, SERVER);
        return record.fault().isEmpty() ? Optional.of(record.sound()) : Optional.empty();
    }

    public List<TrailEntry> trail(TicketNumber number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        SheetRecord record = continuity.read(number, actor);
        sights.passToOther(number, record.sheet(), actor);
        return shown(record, actor);
    }

    /** A trail, and whether it holds. */
    public record Verified(TicketLine line, List<TrailEntry> trail, Verification verification) {}

    /** Holds the trail against itself, the ticket's row against a replay of it, and the files it names against their hashes. */
    public Verified verified(TicketNumber number, Actor actor) {
        Permissions.require(Permission.VERIFY_TRAIL, actor);
        Ticket row = tickets.locked(number);
        SheetRecord record = continuity.read(row, actor);
        if (record.verification().holds()) {
            Map<Integer, String> named = named(record);
            record = continuity.alarming(
                    number, actor, record.with(filesOf(record, named, files.hashes(named.values()))));
        }
        sights.passToOther(number, record.sheet(), actor);
        return new Verified(TicketLine.of(row), shown(record, actor), record.verification());
    }

    /** As {@link #verified(TicketNumber, Actor)}, of those tickets that there are, without their trails and without a lock. */
    public Map<TicketNumber, Verification> verified(Collection<TicketNumber> numbers, Actor actor) {
        Permissions.require(Permission.VERIFY_TRAIL, actor);
        if (numbers.isEmpty()) {
            return Map.of();
        }
        List<SheetRecord> records = continuity.readAll(tickets.seenAtOnce(numbers), actor);
        Map<TicketNumber, Map<Integer, String>> named = records.stream()
                .filter(record -> record.verification().holds())
                .collect(Collectors.toMap(SheetRecord::number, TicketQueries::named));
        Map<String, String> kept = files.hashes(
                named.values().stream().flatMap(of -> of.values().stream()).collect(Collectors.toSet()));
        Map<TicketNumber, Verification> verified = new HashMap<>();
        for (SheetRecord record : records) {
            Map<Integer, String> files = named.get(record.number());
            verified.put(
                    record.number(),
                    files == null
                            ? record.verification()
                            : continuity
                                    .alarming(record.number(), actor, record.with(filesOf(record, files, kept)))
                                    .verification());
        }
        return verified;
    }

    /** The files that a trail that holds names, by entry. */
    private static Map<Integer, String> named(SheetRecord record) {
        Map<Integer, String> named = new TreeMap<>();
        for (TrailEntry entry : record.stored().entries()) {
            if (entry.kind().equals(FILE) && entry.read().fact() instanceof AttachmentAdded file) {
                named.put(entry.entry(), file.sha256());
            }
        }
        return named;
    }

    private static Verification filesOf(SheetRecord record, Map<Integer, String> named, Map<String, String> kept) {
        for (Map.Entry<Integer, String> file : named.entrySet()) {
            String found = kept.get(file.getValue());
            if (!file.getValue().equals(found)) {
                return new Verification(
                        record.stored().entries().size(),
                        false,
                        file.getKey(),
                        "Entry " + file.getKey() + " names a file that "
                                + (found == null ? "is gone." : "was altered since it was attached."));
            }
        }
        return record.verification();
    }
}
