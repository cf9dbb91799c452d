package org.benchtrail.seal.offline;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.TilePath;
import org.benchtrail.core.method.TicketNumber;

/** Holds leaves against each other and against the records that they seal: places without a gap, bytes, chains. */
final class RecordVerifier {
    private static final String FILES = "files";
    private static final String TICKET = "ticket/";
    private static final String INCIDENTS = "incidents";

    private final Path folder;
    private final VerifyReport report;
    private final boolean present;
    private final ObjectMapper mapper = new ObjectMapper();
    private final Map<String, Leaf> ends = new HashMap<>();
    private final Map<String, List<Hole>> holes = new TreeMap<>();
    private final List<Leaf> unlike = new ArrayList<>();
    private Iterator<String> lines = List.<String>of().iterator();
    private String part = "";
    private long checked;

    RecordVerifier(Path folder, VerifyReport report) {
        this.folder = folder.resolve("records");
        this.report = report;
        present = Files.isDirectory(this.folder);
    }

    /** Goes on with the records of that tile of leaves. */
    void open(TilePath leaves) throws IOException {
        part = ExportedRecords.name(leaves);
        Path file = folder.resolveSibling(part);
        lines = List.<String>of().iterator();
        if (present && Files.exists(file)) {
            // each byte as one character, so that whatever stands there is hashed as it stands
            String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
            List<String> found = List.of(text.split("\n", -1));
            if (found.size() != leaves.width() + 1 || !found.get(leaves.width()).isEmpty()) {
                report.found("record", part, "has not one line for each of " + leaves.width() + " leaves");
            }
            lines = found.iterator();
        }
    }

    void next(Leaf leaf) {
        Leaf before = ends.put(leaf.stream(), leaf);
        long expected = before == null ? 1 : before.place() + 1;
        if (leaf.place() != expected) {
            report.found("stream", leaf.stream(), "place " + leaf.place() + " stands where " + expected + " belongs");
        }
        if (!present) {
            return;
        }
        String where = leaf.stream() + " " + leaf.place();
        if (!lines.hasNext()) {
            report.found("record", where, "is missing in " + part);
            return;
        }
        byte[] record = lines.next().getBytes(StandardCharsets.ISO_8859_1);
        checked++;
        if (!HashChain.hash(record).equals(leaf.hash().hex())) {
            unlike.add(leaf);
            return;
        }
        if (leaf.stream().equals(INCIDENTS)) {
            incident(record, leaf.place());
        }
        String previous = before == null ? HashChain.START : before.hash().hex();
        if (!leaf.stream().equals(FILES) && !isPlaced(record, leaf, previous)) {
            report.found("chain", where, "does not follow the record before it");
        }
    }

    /** Where a ticket went on after what is lost of it, who agreed is recorded. */
    private void incident(byte[] record, long place) {
        try {
            JsonNode json = mapper.readTree(record);
            JsonNode said = json.path("content");
            if (json.path("what").asText().equals("mending")
                    && said.path("way").asText().equals("GO_ON")
                    && said.path("outcome").asText().equals("AGREED")) {
                holes.computeIfAbsent(
                                TICKET + new TicketNumber(said.path("ticket").asInt()), ticket -> new ArrayList<>())
                        .add(new Hole(
                                said.path("first").asInt(),
                                said.path("last").asInt(),
                                said.path("hash").asText(),
                                place));
            }
        } catch (IOException | IllegalArgumentException e) {
            report.found("record", INCIDENTS + " " + place, "cannot be read");
        }
    }

    private boolean isPlaced(byte[] record, Leaf leaf, String previous) {
        try {
            JsonNode json = mapper.readTree(record);
            boolean ticket = leaf.stream().startsWith(TICKET);
            String stream = ticket
                    ? TICKET + json.path("ticket").asText()
                    : json.path("stream").asText();
            long place = json.path(ticket ? "entry" : "place").asLong();
            return stream.equals(leaf.stream())
                    && place == leaf.place()
                    && json.path("previous").asText().equals(previous);
        } catch (IOException e) {
            return false;
        }
    }

    void end() {
        for (Leaf leaf : unlike) {
            if (holes.getOrDefault(leaf.stream(), List.of()).stream().noneMatch(hole -> hole.takes(leaf.place()))) {
                report.found("record", leaf.stream() + " " + leaf.place(), "is not what was sealed");
            }
        }
        holes.forEach((stream, lost) -> lost.forEach(hole -> report.unsure(stream + ": " + hole.sentence())));
        report.tell(
                present
                        ? checked + " records of " + ends.size() + " streams were looked at."
                        : "There are no records here: what the leaves seal was not looked at.");
    }
}
