package org.benchtrail.ticket;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.site.Due;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.site.TicketClock;
import org.jspecify.annotations.Nullable;

/** What lists and searches need of a ticket: an image of its job sheet, made anew after every act, never changed otherwise. */
@Entity
class Ticket {
    /** In UTF-16 code units; the index of words takes one megabyte of text at most. */
    private static final int MOST_WORDS = 150_000;

    @Id
    int serial;

    String title = "";

    @Enumerated(EnumType.STRING)
    Category category = Category.OTHER;

    String device = "";
    String place = "";

    @Column(updatable = false)
    long requester;

    @Enumerated(EnumType.STRING)
    Priority.Impact impact = Priority.Impact.ONE_PERSON;

    @Enumerated(EnumType.STRING)
    Priority.Urgency urgency = Priority.Urgency.CAN_WAIT;

    @Enumerated(EnumType.STRING)
    Priority priority = Priority.WHEN_PLANNED;

    @Enumerated(EnumType.STRING)
    Step step = Step.IDENTIFY;

    @Enumerated(EnumType.STRING)
    Standing standing = Standing.OPEN;

    int round;

    @Nullable
    String assignee;

    @Column(updatable = false)
    Instant opened = Instant.EPOCH;

    Instant due = Instant.EPOCH;

    @Column(name = "due_what")
    @Enumerated(EnumType.STRING)
    Due.What dueWhat = Due.What.FIX;

    /** The latest decision of the site when the due time was made. */
    @Column(name = "site_version")
    int siteVersion;

    /** What the due time is counted from, see {@link ClockLine}; empty in rows that were last made before it was kept. */
    String clock = "";

    @Column(name = "hold_for")
    @Nullable
    String holdFor;

    /** Whether its hold stops the clock until it is to be looked at again. */
    @Column(name = "clock_stopped")
    boolean clockStopped;

    @Column(name = "follow_up")
    @Nullable
    Instant followUp;

    boolean escalated;

    @Nullable
    String offered;

    int entries;

    @Column(name = "last_hash")
    String lastHash = "";

    Instant touched = Instant.EPOCH;

    @Nullable
    Instant ended;

    String words = "";

    /** Place of the incident that says that its trail was found broken; null unless it still has to be mended. */
    @Nullable
    Long broken;

    protected Ticket() {}

    /**
     * @param hash of the trail's last entry
     * @param site by which it is due
     */
    Ticket(TicketNumber number, JobSheet sheet, String hash, SiteHistory site) {
        serial = number.serial();
        requester = sheet.opened().requester();
        opened = sheet.facts().get(0).stamp().at();
        show(sheet, hash, site);
    }

    /** Takes over what the sheet says now, and where its trail ends. What had ended before stays due when it was due then. */
    final void show(JobSheet sheet, String hash, SiteHistory site) {
        boolean stays = ended != null && !sheet.course().isOpen();
        lastHash = hash;
        Opened report = sheet.opened();
        title = report.title();
        category = report.category();
        device = report.device();
        place = report.place();
        impact = report.impact();
        urgency = report.urgency();
        priority = report.priority();
        show(sheet.course());
        due(TicketClock.of(sheet), stays ? site.upTo(siteVersion) : site);
        entries = sheet.entries();
        touched = sheet.facts().get(sheet.facts().size() - 1).stamp().at();
        words = words(sheet);
    }

    /** Makes the due time anew. */
    final void due(TicketClock counted, SiteHistory site) {
        Due next = counted.due(site);
        due = next.at();
        dueWhat = next.what();
        siteVersion = site.latest();
        clock = ClockLine.of(counted);
        clockStopped = holdFor != null && counted.lastHoldStops(site);
    }

    private void show(Course course) {
        step = course.step();
        standing = course.standing();
        round = course.round();
        assignee = course.assignee();
        holdFor = course.hold() == null ? null : course.hold().waitingFor().words();
        followUp = course.hold() == null ? null : course.hold().followUp();
        escalated = course.escalation() != null;
        offered = course.offered();
        ended = course.closed();
    }

    private static String words(JobSheet sheet) {
        Opened report = sheet.opened();
        String all = Stream.of(
                        Stream.of(report.title(), report.device(), report.place()),
                        sheet.all(SymptomRecorded.class).stream()
                                .flatMap(s ->
                                        Stream.of(s.fact().words(), s.fact().observable())),
                        sheet.all(CauseNamed.class).stream().map(c -> c.fact().cause()))
                .flatMap(s -> s)
                .collect(Collectors.joining("\n"));
        if (all.length() <= MOST_WORDS) {
            return all;
        }
        boolean splits = Character.isHighSurrogate(all.charAt(MOST_WORDS - 1));
        return all.substring(0, splits ? MOST_WORDS - 1 : MOST_WORDS);
    }

    TicketNumber number() {
        return new TicketNumber(serial);
    }

    /** Whether this image is what the sheet says, by what the site had decided when it was made. */
    boolean shows(JobSheet sheet, SiteHistory site) {
        return columns().equals(new Ticket(number(), sheet, lastHash, site.upTo(siteVersion)).columns());
    }

    /** Without the clock: a row that was last made before it was kept does not know it. */
    private List<Object> columns() {
        return Arrays.asList(
                title,
                category,
                device,
                place,
                requester,
                impact,
                urgency,
                priority,
                step,
                standing,
                round,
                assignee,
                opened,
                due,
                dueWhat,
                holdFor,
                followUp,
                clockStopped,
                escalated,
                offered,
                entries,
                touched,
                ended,
                words);
    }
}
