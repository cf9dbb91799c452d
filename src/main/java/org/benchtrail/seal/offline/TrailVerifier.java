package org.benchtrail.seal.offline;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.MerkleProofs;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/** Verifies the trail of one ticket: the head's signatures, each entry's bytes, its place in the chain, and its proof. */
final class TrailVerifier {
    private static final long LARGEST = 1L << 30;

    private final VerifyArguments asked;
    private final VerifyReport report = new VerifyReport();
    private final ObjectMapper mapper = new ObjectMapper();
    private String previous = HashChain.START;
    private long lastLeaf = -1;
    private int unsealed;
    private int veiled;
    private int erased;
    private int next = 1;
    private final TrailDecisions decisions = new TrailDecisions();

    TrailVerifier(VerifyArguments asked) {
        this.asked = asked;
    }

    /** What the first line says. */
    private record Begins(String ticket, SignedNote note, Checkpoint head, SortedMap<String, String> policies) {}

    VerifyReport verify() throws IOException {
        if (Files.size(asked.export()) > LARGEST) {
            report.noExport(asked.export() + " is larger than 1 GiB.");
            return report;
        }
        // each byte as one character, so that what is no text is told and not replaced
        String file = new String(Files.readAllBytes(asked.export()), StandardCharsets.ISO_8859_1);
        String[] lines = file.split("\n", -1);
        Begins begins = begins(utf8(lines[0]));
        if (begins == null) {
            report.noExport(asked.export() + " is no trail with proofs.");
            return report;
        }
        Checkpoint head = begins.head();
        report.tell("Ticket " + begins.ticket() + ", by the head of " + head.origin() + ", " + head.size()
                + " leaves, root " + head.root().base64() + ".");
        HeadSignatures.look(begins.note(), head, asked.policy(), report);
        if (lines.length == 1 || !lines[lines.length - 1].isEmpty()) {
            report.found("line", "the end", "the last line has no end: something was cut off");
        }
        for (int i = 1; i < lines.length - 1; i++) {
            line(utf8(lines[i]), begins);
        }
        if (report.findings().isEmpty()) {
            decisions.tell(begins.policies(), report);
        }
        Path leaves = asked.leaves();
        if (leaves != null) {
            new LeafList(leaves, head, report).look(begins.ticket(), next - 1L - unsealed, asked.earlier());
        } else if (report.findings().isEmpty()) {
            earlier(head);
        }
        if (asked.roots() != null) {
            report.tell("Time-stamps are in the exported log; the file of one ticket carries none.");
        }
        tell(lines.length - 2);
        return report;
    }

    private static String utf8(String bytes) {
        return new String(bytes.getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8);
    }

    private @Nullable Begins begins(String line) {
        try {
            JsonNode json = mapper.readTree(line);
            String ticket = json.path("ticket").asText();
            SignedNote note = SignedNote.parse(json.path("head").asText());
            SortedMap<String, String> policies = new TreeMap<>();
            json.path(TrailLines.POLICIES)
                    .fields()
                    .forEachRemaining(named ->
                            policies.put(named.getKey(), named.getValue().asText()));
            return TrailLines.first(ticket, note, policies).equals(line)
                    ? new Begins(ticket, note, Checkpoint.parse(note.text()), policies)
                    : null;
        } catch (IOException | IllegalArgumentException e) {
            return null;
        }
    }

    private void line(String line, Begins begins) {
        int place = next;
        String where = "entry " + place;
        next++;
        try {
            JsonNode json = mapper.readTree(line);
            if (json.has("hole")) {
                hole(place, json, line, begins);
                return;
            }
            String canonical =
                    json.path("entry").isTextual() ? json.get("entry").asText() : null;
            String hash = json.path("hash").asText();
            Long leaf = leaf(json);
            List<Hash> path = path(json);
            String words = json.path(TrailLines.WORDS).isTextual()
                    ? json.get(TrailLines.WORDS).asText()
                    : null;
            if (!TrailLines.entry(canonical, words, hash, leaf, path).equals(line)) {
                report.found("line", where, "is not written as such a line is");
                return;
            }
            content(place, canonical, words, hash, begins.ticket());
            proof(place, new Leaf("ticket/" + begins.ticket(), place, Hash.ofHex(hash)), leaf, path, begins.head());
            previous = hash;
        } catch (IOException | IllegalArgumentException e) {
            report.found("line", where, "cannot be read");
        }
    }

    private static @Nullable Long leaf(JsonNode json) {
        return json.path("leaf").isIntegralNumber() ? json.get("leaf").asLong() : null;
    }

    private static List<Hash> path(JsonNode json) {
        List<Hash> path = new ArrayList<>();
        json.path("proof").forEach(h -> path.add(Hash.ofBase64(h.asText())));
        return path;
    }

    /** A hole counts only as the sealed record of those who agreed says it: of this ticket, at this place. */
    private void hole(int place, JsonNode json, String line, Begins begins) throws IOException {
        String record = json.path("hole").asText();
        Long index = leaf(json);
        List<Hash> path = path(json);
        JsonNode incident = mapper.readTree(record);
        JsonNode said = incident.path("content");
        Hash hash = Hash.ofHex(HashChain.hash(record.getBytes(StandardCharsets.UTF_8)));
        boolean agreed = incident.path("stream").asText().equals("incidents")
                && incident.path("what").asText().equals("mending")
                && said.path("way").asText().equals("GO_ON")
                && said.path("outcome").asText().equals("AGREED")
                && begins.ticket().startsWith(said.path("ticket").asInt() + "-")
                && said.path("first").asInt() == place
                && said.path("last").asInt() >= place;
        if (!TrailLines.hole(record, index, path).equals(line) || !agreed) {
            report.found("hole", "entry " + place, "is missing, and nobody agreed to go on without it");
            return;
        }
        Checkpoint head = begins.head();
        long at = incident.path("place").asLong();
        if (index == null) {
            report.unsure("That somebody agreed to go on after a hole is not sealed by this head.");
        } else if (!MerkleProofs.includes(
                index, head.size(), new Leaf("incidents", at, hash).leafHash(), path, head.root())) {
            report.found("proof", "incident " + at, "is not in the log of this head");
        }
        decisions.lacking();
        Hole hole = new Hole(place, said.path("last").asInt(), said.path("hash").asText(), at);
        report.unsure(hole.sentence());
        previous = hole.hash();
        next = hole.last() + 1;
    }

    private void content(int place, @Nullable String canonical, @Nullable String words, String hash, String ticket)
            throws IOException {
        if (canonical == null) {
            veiled++;
            decisions.lacking();
            return;
        }
        if (!HashChain.hash(canonical.getBytes(StandardCharsets.UTF_8)).equals(hash)) {
            report.found("record", "entry " + place, "is not what its hash was made of");
            return;
        }
        words(place, canonical, words, hash);
        JsonNode entry = mapper.readTree(canonical);
        if (!entry.path("ticket").asText().equals(ticket)
                || entry.path("entry").asLong() != place
                || !entry.path("previous").asText().equals(previous)) {
            report.found("chain", "entry " + place, "does not follow the entry before it");
        }
    }

    private void words(int place, String canonical, @Nullable String words, String hash) {
        TrailEntry entry = new TrailEntry(
                place,
                Instant.EPOCH,
                "",
                "",
                canonical.getBytes(StandardCharsets.UTF_8),
                hash,
                words == null ? null : words.getBytes(StandardCharsets.UTF_8));
        if (entry.hasOtherWords()) {
            report.found("words", "entry " + place, "are not those that it holds commitments to");
        } else if (entry.lacksWords()) {
            erased++;
        }
        decisions.add(entry);
    }

    private void proof(int place, Leaf leaf, @Nullable Long index, List<Hash> path, Checkpoint head) {
        if (index == null) {
            unsealed++;
        } else if (unsealed > 0 || index <= lastLeaf) {
            report.found("leaf", "entry " + place, "is sealed before an entry that comes before it");
        } else if (!MerkleProofs.includes(index, head.size(), leaf.leafHash(), path, head.root())) {
            report.found("proof", "entry " + place, "is not in the log of this head");
        }
        lastLeaf = index == null ? lastLeaf : index;
    }

    private void earlier(Checkpoint head) {
        VerifyArguments.Head earlier = asked.earlier();
        if (earlier == null) {
            return;
        }
        if (earlier.size() == head.size() && earlier.root().equals(head.root())) {
            report.contains(earlier.size());
        } else if (earlier.size() == head.size()) {
            report.found(
                    "earlier head",
                    "head",
                    "has another root than the head that you hold: the log was rewritten" + earlier.doubt());
        } else {
            report.unsure("One ticket does not show that the log of " + head.size()
                    + " leaves goes on from the head that you hold: give --leaves with the exported log for that.");
        }
    }

    private void tell(int entries) {
        report.tell(entries + (entries == next - 1 ? " entries" : " lines")
                + " were looked at."
                + (asked.leaves() == null
                        ? " That there is no further one is shown by the whole log only: give --leaves."
                        : ""));
        if (unsealed > 0) {
            report.unsure("The last " + unsealed + " of them are not sealed by this head.");
        }
        if (erased > 0) {
            report.unsure(
                    "The words of " + erased + " of them are not in the file: they were erased, or taken out of it.");
        }
        if (veiled > 0) {
            report.unsure(veiled + " of them are shown by their hash alone.");
        }
    }
}
