package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.ByteArrayOutputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TilePath;
import org.benchtrail.core.integrity.TreeReader;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** The rows of the log; everything within the running transaction. */
@Startup
@ApplicationScoped
class LogRows implements TreeReader.Tiles {
    private final EntityManager database;
    private final SqlText text;

    LogRows(EntityManager database) {
        this.database = database;
        text = SqlText.of(LogRows.class)
                .having(
                        "lock",
                        "queued",
                        "take",
                        "ends",
                        "head",
                        "add leaves",
                        "add nodes",
                        "grow",
                        "set aside",
                        "hashes",
                        "nodes",
                        "leaves",
                        "places",
                        "newest",
                        "publish",
                        "record",
                        "records",
                        "newest records",
                        "waiting",
                        "cosignatures",
                        "heads",
                        "first signed",
                        "heads between",
                        "nodes between",
                        "behind",
                        "put back streams",
                        "put back numbers",
                        "queued already",
                        "lost",
                        "which are lost",
                        "holes",
                        "broken");
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    /** What waits to be sealed. */
    record Queued(
            long id,
            Instant at,
            String stream,
            @Nullable Long place,
            @Nullable String previous,
            String hash) {}

    /** Where a stream ends in the log. */
    record End(String stream, long place, String hash) {}

    private record Head(long size, byte[] frontier) {}

    /** Whether this transaction is the one that seals; of several nodes one does at a time. */
    boolean lock() {
        return of("lock").value(Boolean.class);
    }

    /** Where a record stands in the queue; empty once it is sealed. */
    OptionalLong queued(String stream, long place) {
        return of("queued").with("stream", stream).with("place", place).values(Long.class).stream()
                .mapToLong(Long::longValue)
                .findFirst();
    }

    /** Takes the oldest out of the queue, in their order, and none behind the last. */
    List<Queued> take(int most, long last) {
        return of("take").with("most", most).with("last", last).rows(Queued.class).stream()
                .sorted((a, b) -> Long.compare(a.id(), b.id()))
                .toList();
    }

    Map<String, End> ends(Collection<String> streams) {
        return of("ends").with("streams", streams.toArray(String[]::new)).rows(End.class).stream()
                .collect(Collectors.toMap(End::stream, Function.identity()));
    }

    /** The edge of the tree as it is sealed, whether it is signed or not. */
    Frontier frontier(Frontier.Completed completed) {
        Head head = of("head").row(Head.class).orElseThrow();
        return new Frontier(head.size(), hashes(head.frontier()), completed);
    }

    /** Hashes that stand one after the other. */
    static List<Hash> hashes(byte[] joined) {
        List<Hash> hashes = new ArrayList<>();
        for (int at = 0; at < joined.length; at += Hash.BYTES) {
            hashes.add(Hash.of(Arrays.copyOfRange(joined, at, at + Hash.BYTES)));
        }
        return hashes;
    }

    /** How many leaves are sealed, whether they are signed or not. */
    long size() {
        return of("head").row(Head.class).orElseThrow().size();
    }

    void add(long first, List<Leaf> leaves, List<Hash> leafHashes) {
        Long[] places = leaves.stream().map(Leaf::place).toArray(Long[]::new);
        of("add leaves")
                .with("first", first)
                .with("streams", leaves.stream().map(Leaf::stream).toArray(String[]::new))
                .with("places", places)
                .with("hashes", leaves.stream().map(leaf -> leaf.hash().hex()).toArray(String[]::new))
                .with("leafHashes", leafHashes.stream().map(Hash::hex).toArray(String[]::new))
                .run();
    }

    /** One hash over a full tile. */
    record Node(int level, long n, Hash hash) {}

    void add(List<Node> nodes) {
        of("add nodes")
                .with("levels", nodes.stream().map(Node::level).toArray(Integer[]::new))
                .with("numbers", nodes.stream().map(Node::n).toArray(Long[]::new))
                .with("hashes", nodes.stream().map(node -> node.hash().hex()).toArray(String[]::new))
                .run();
    }

    void grow(Frontier frontier) {
        ByteArrayOutputStream edge = new ByteArrayOutputStream();
        frontier.subtrees().forEach(hash -> edge.writeBytes(hash.bytes()));
        of("grow")
                .with("size", frontier.size())
                .with("frontier", edge.toByteArray())
                .run();
    }

    /** What does not go on where its stream ends is kept apart. */
    void setAside(Queued queued) {
        of("set aside")
                .with("id", queued.id())
                .with("at", queued.at())
                .with("stream", queued.stream())
                .with("place", queued.place())
                .with("previous", queued.previous())
                .with("hash", queued.hash())
                .run();
    }

    @Override
    public byte[] read(TilePath path) {
        long from = path.n() * TilePath.FULL;
        Sql asked = path.level() == 0 ? of("hashes") : of("nodes").with("level", path.level());
        return asked.with("from", from).with("to", from + path.width()).values(byte[].class).stream()
                .collect(
                        ByteArrayOutputStream::new,
                        ByteArrayOutputStream::writeBytes,
                        (a, b) -> a.writeBytes(b.toByteArray()))
                .toByteArray();
    }

    private record Row(String stream, long place, byte[] hash) {
        Leaf leaf() {
            return new Leaf(stream, place, Hash.of(hash));
        }
    }

    /** Leaves from an index to before another. */
    List<Leaf> leaves(long from, long to) {
        return of("leaves").with("from", from).with("to", to).rows(Row.class).stream()
                .map(Row::leaf)
                .toList();
    }

    /** Where an entry of a stream stands in the log. */
    record PlaceRow(long place, long index) {}

    List<PlaceRow> places(String stream) {
        return of("places").with("stream", stream).rows(PlaceRow.class);
    }

    /** A checkpoint as it was published, without what witnesses added. */
    record Signed(long size, Instant signedAt, String note) {}

    Optional<Signed> newest() {
        return of("newest").row(Signed.class);
    }

    /** Checkpoints, from the largest of those that have at most so many leaves downwards. */
    List<Signed> headsFrom(long largest, int most) {
        return of("heads").with("largest", largest).with("most", most).rows(Signed.class);
    }

    /** When the first checkpoint was signed. */
    Optional<Instant> firstSigned() {
        return of("first signed").values(Instant.class).stream().findFirst();
    }

    /** The newest checkpoint with all that witnesses signed of it. */
    Optional<SignedNote> newestNote() {
        return newest().map(this::note);
    }

    /** A checkpoint with all that witnesses signed of it. */
    SignedNote note(Signed signed) {
        return SignedNote.parse(signed.note())
                .with(of("cosignatures").with("size", signed.size()).values(String.class).stream()
                        .map(SignedNote.Line::parse)
                        .toList());
    }

    /** Checkpoints of sizes after one, up to another; the smallest first. */
    List<Signed> heads(long after, long upTo) {
        return of("heads between").with("from", after).with("to", upTo).rows(Signed.class);
    }

    /** A stored hash over a full tile. */
    record NodeRow(int level, long n, byte[] hash) {}

    /** Hashes over the full tiles that begin at a leaf or after it, and before another. */
    List<NodeRow> nodes(long from, long to) {
        return of("nodes between").with("from", from).with("to", to).rows(NodeRow.class);
    }

    /** Whether the log is known to be ahead of the database: then nothing can be recorded. Null ends it. */
    void behind(@Nullable String why) {
        of("behind").with("why", why).run();
    }

    /** After leaves from an index on were put back: streams and numbers go on after them. Answers with how many records are lost. */
    int putBack(long from) {
        for (String what : List.of("put back streams", "put back numbers", "queued already")) {
            of(what).with("from", from).run();
        }
        return of("lost").with("from", from).run();
    }

    /** Leaves between two indices of records that are lost. */
    List<Long> lost(long from, long to) {
        return of("which are lost").with("from", from).with("to", to).values(Long.class);
    }

    private record HoleRow(String stream, int first, int last, String hash, long incident) {
        Hole hole() {
            return new Hole(first, last, hash, incident);
        }
    }

    /** What is lost of tickets that went on all the same, by their streams; each with the record of those who agreed. */
    Map<String, List<Hole>> holes() {
        return of("holes").rows(HoleRow.class).stream()
                .collect(Collectors.groupingBy(
                        HoleRow::stream, TreeMap::new, Collectors.mapping(HoleRow::hole, Collectors.toList())));
    }

    /** Tickets at which an act was refused because their trail does not hold, the newest first. */
    List<Integer> broken(int most) {
        return of("broken").with("most", most).values(Integer.class);
    }

    void publish(Signed signed) {
        of("publish")
                .with("size", signed.size())
                .with("at", signed.signedAt())
                .with("note", signed.note())
                .run();
    }

    /** A record of the site. */
    record SiteRecord(long place, byte[] canonical, String hash) {}

    /** Adds a record to a stream of the site, which is sealed like everything else. */
    void record(String stream, String what, String json) {
        of("record")
                .with("stream", stream)
                .with("what", what)
                .with("json", json)
                .value(Long.class);
    }

    /** The newest records of a stream of the site, the newest first. */
    List<SiteRecord> newest(String stream, int most) {
        return of("newest records").with("stream", stream).with("most", most).rows(SiteRecord.class);
    }

    /** Records of a stream of the site after a place, in their order. */
    List<SiteRecord> records(String stream, long after, int most) {
        return of("records")
                .with("stream", stream)
                .with("after", after)
                .with("most", most)
                .rows(SiteRecord.class);
    }

    /**
     * What is not sealed yet.
     *
     * @param stuck how many were set aside, and will never be sealed as they are
     */
    record Waiting(long count, @Nullable Instant oldest, long stuck) {}

    Waiting waiting() {
        return of("waiting").row(Waiting.class).orElseThrow();
    }
}
