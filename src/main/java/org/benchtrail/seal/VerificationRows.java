package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.SeenTimes;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** Looks at the whole site, what they found, and what they ask the database; everything within the running transaction. */
@Startup
@ApplicationScoped
class VerificationRows {
    /** A look that was not heard of for this long has died with its server. */
    private static final Duration FORGOTTEN = Duration.ofMinutes(2);

    private final EntityManager database;
    private final SqlText text;

    VerificationRows(EntityManager database) {
        this.database = database;
        text = SqlText.of(VerificationRows.class)
                .having(
                        "end forgotten",
                        "alone",
                        "due",
                        "begin",
                        "newest",
                        "go on",
                        "stop",
                        "interrupt",
                        "end",
                        "find",
                        "findings",
                        "unlike",
                        "missing numbers",
                        "not queued",
                        "tickets",
                        "counter",
                        "strays",
                        "ends unlike",
                        "records not sealed",
                        "queue unlike",
                        "files unlike",
                        "edge",
                        "cosignatures",
                        "seen heads",
                        "out of time",
                        "rules since",
                        "sealed before",
                        "policies recorded",
                        "erased alone");
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    /**
     * A look at the whole site.
     *
     * @param size leaves there were when it began
     * @param done how many of them were looked at
     * @param stopped whether it ended before its end
     * @param interrupted whether it died with its server
     * @param again the one that was interrupted, of which this one is made anew; null if none was
     */
    record Run(
            long id,
            Instant started,
            @Nullable Instant ended,
            String by,
            long size,
            long done,
            boolean stopped,
            boolean interrupted,
            @Nullable Long again) {}

    /** Begins a look, unless one is going on; answers with whether it did. */
    boolean begin(String by, long size, Instant now) {
        of("end forgotten")
                .with("now", now)
                .with("before", now.minus(FORGOTTEN))
                .run();
        return of("begin").with("now", now).with("by", by).with("size", size).run() == 1;
    }

    /**
     * Whether one is to begin by itself: the last one was interrupted, or it is long ago. Of several servers one is told so at a time.
     *
     * @param before the last one, or the first head where there was none, has to be older than this
     * @param again as old has to be one that was made anew and interrupted as well
     */
    boolean isDue(Instant now, Instant before, Instant again) {
        if (!of("alone").value(Boolean.class)) {
            return false;
        }
        of("end forgotten")
                .with("now", now)
                .with("before", now.minus(FORGOTTEN))
                .run();
        return of("due").with("before", before).with("again", again).value(Boolean.class);
    }

    Optional<Run> newest() {
        return of("newest").row(Run.class);
    }

    /** Answers with whether it is to go on. */
    boolean goOn(long id, long done, Instant now) {
        return of("go on").with("id", id).with("done", done).with("now", now).run() == 1;
    }

    void stop() {
        of("stop").run();
    }

    /** It is left at the next place where it can be, if it goes on. */
    void interrupt(long id) {
        of("interrupt").with("id", id).run();
    }

    void end(long id, Instant now) {
        of("end").with("id", id).with("now", now).run();
    }

    /**
     * Something that does not hold.
     *
     * @param what kind of check
     * @param place where: table and row, stream and place, or ticket
     * @param leaf that says otherwise; null where that cannot be told
     * @param head the first head that holds this leaf, once it is kept; null if there is none
     */
    record Finding(
            String what,
            String place,
            String sentence,
            @Nullable Long leaf,
            @Nullable Long head) {
        Finding(String what, String place, String sentence) {
            this(what, place, sentence, null, null);
        }

        Finding(String what, String place, String sentence, @Nullable Long leaf) {
            this(what, place, sentence, leaf, null);
        }
    }

    /** Keeps what was found; of more than 1,000 the first ones. */
    void find(long run, List<Finding> found) {
        of("find")
                .with("run", run)
                .with("whats", found.stream().map(Finding::what).toArray(String[]::new))
                .with("places", found.stream().map(Finding::place).toArray(String[]::new))
                .with("sentences", found.stream().map(Finding::sentence).toArray(String[]::new))
                .with("leaves", found.stream().map(Finding::leaf).toArray(Long[]::new))
                .run();
    }

    /** The first of them; at most 200. */
    List<Finding> findings(long run) {
        return of("findings").with("run", run).rows(Finding.class);
    }

    /** A row that is not what was sealed of it. */
    record Unlike(String rowKey, String fault) {}

    List<Unlike> unlike(String stream, String table, String key) {
        return of("unlike")
                .with("stream", stream)
                .with("table", table)
                .with("key", key)
                .rows(Unlike.class);
    }

    /** Numbers of which there is no ticket, from the first to the last. */
    record Gap(long first, long last) {}

    List<Gap> missingNumbers() {
        return of("missing numbers").rows(Gap.class);
    }

    /** A ticket that has more or fewer entries than what is sealed and what waits for it. */
    record NotQueued(String stream, long entries, long sealed) {}

    List<NotQueued> notQueued() {
        return of("not queued").rows(NotQueued.class);
    }

    List<Integer> tickets(int after, int most) {
        return of("tickets").with("after", after).with("most", most).values(Integer.class);
    }

    /** The counter of ticket numbers, if it does not stand where the tickets do. */
    List<String> counter() {
        return of("counter").values(String.class);
    }

    /** Salts that no record names, each by stream, place and name. */
    List<String> strays() {
        return of("strays").values(String.class);
    }

    /**
     * Streams of the site of which the end is not that of their records.
     *
     * @param streams that every site has
     */
    List<String> endsUnlike(List<String> streams) {
        return of("ends unlike").with("streams", streams.toArray(String[]::new)).values(String.class);
    }

    /** Records that are neither sealed nor wait for it, by stream and place. */
    List<String> recordsNotSealed() {
        return of("records not sealed").values(String.class);
    }

    /** What waits to be sealed and is not what is stored, by stream and place. */
    List<String> queueUnlike() {
        return of("queue unlike").values(String.class);
    }

    /** Files that are not what was sealed of them, and records of files that are gone: table and key. */
    List<String> filesUnlike() {
        return of("files unlike").values(String.class);
    }

    /**
     * The edge of the tree as it is kept.
     *
     * @param leaves how many there are by the last one
     * @param beyond hashes over tiles that the tree does not have
     */
    record Edge(long size, byte[] frontier, long leaves, long beyond) {}

    Edge edge() {
        return of("edge").row(Edge.class).orElseThrow();
    }

    /** What a witness signed, beside the note that it signed. */
    record Signed(long size, String key, Instant at, String line, String note) {}

    /** Signatures of witnesses of heads after a size. */
    List<Signed> cosignatures(long after, int most) {
        return of("cosignatures").with("after", after).with("most", most).rows(Signed.class);
    }

    /** Tickets of which the mark that they are broken is not what the incidents say. */
    List<String> marks() {
        return of("marks").values(String.class);
    }

    /** Heads that a witness signed, the smallest first. */
    List<SeenTimes.Head> seenHeads() {
        return of("seen heads").rows(SeenTimes.Head.class);
    }

    /**
     * An entry whose time is none at which it can have been put into the log.
     *
     * @param span in which its leaf lies, the first being 1
     */
    record OutOfTime(int span, String stream, long place, Instant at) {}

    List<OutOfTime> outOfTime(List<SeenTimes.Span> spans, int most) {
        return of("out of time")
                .with("froms", spans.stream().map(SeenTimes.Span::from).toArray(Long[]::new))
                .with("tos", spans.stream().map(SeenTimes.Span::to).toArray(Long[]::new))
                .with(
                        "notBefores",
                        spans.stream().map(span -> span.notBefore().toString()).toArray(String[]::new))
                .with(
                        "notAfters",
                        spans.stream().map(span -> span.notAfter().toString()).toArray(String[]::new))
                .with("most", most)
                .rows(OutOfTime.class);
    }

    /** The leaf with which these rules went into the log; empty if others were recorded since, or these are not sealed. */
    Optional<Long> rulesSince(String rules) {
        return of("rules since").with("rules", rules).values(Long.class).stream()
                .findFirst();
    }

    private record SealedBefore(String stream, long place) {}

    /** The last place of each stream that went into the log before a leaf; those of which none did are left out. */
    Map<String, Long> sealedBefore(List<String> streams, long leaf) {
        return of("sealed before")
                .with("streams", streams.toArray(String[]::new))
                .with("leaf", leaf)
                .rows(SealedBefore.class)
                .stream()
                .collect(Collectors.toMap(SealedBefore::stream, SealedBefore::place));
    }

    /** The lines of all policies that a server was ever started with. */
    List<String> policiesRecorded() {
        return of("policies recorded").values(String.class);
    }

    /** Requesters who were erased without a decision. */
    List<String> erasedAlone() {
        return of("erased alone").values(String.class);
    }
}
