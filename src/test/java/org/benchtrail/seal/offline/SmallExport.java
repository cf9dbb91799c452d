package org.benchtrail.seal.offline;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.EntryBundle;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Keys;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.ProofFile;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.TreeReader;
import org.benchtrail.core.integrity.VerifierKey;

/** An exported log of a few records, with the keys of published tests. */
final class SmallExport {
    static final SigningKey LOG = new SigningKey("log.shop.example/trail", VerifierKey.LOG, Keys.TEST_1);
    static final SigningKey WITNESS = new SigningKey("witness.example/w1", VerifierKey.WITNESS, Keys.TEST_2);
    static final String POLICY = "log " + LOG.verifier() + "\nwitness w1 " + WITNESS.verifier() + "\nquorum w1\n";

    private final List<Leaf> leaves = new ArrayList<>();
    private final List<String> records = new ArrayList<>();
    private final Map<String, String> ends = new HashMap<>();

    SmallExport site(String stream, String content) {
        return add(
                stream,
                "{\"content\":\"" + content + "\",\"place\":%d,\"previous\":\"%s\",\"stream\":\"" + stream + "\"}");
    }

    SmallExport entry(String ticket, String payload) {
        return add(
                "ticket/" + ticket,
                "{\"entry\":%d,\"payload\":\"" + payload + "\",\"previous\":\"%s\",\"ticket\":\"" + ticket + "\"}");
    }

    private SmallExport add(String stream, String form) {
        long place =
                1 + leaves.stream().filter(leaf -> leaf.stream().equals(stream)).count();
        String record = String.format(form, place, ends.getOrDefault(stream, HashChain.START));
        String hash = HashChain.hash(record.getBytes(StandardCharsets.UTF_8));
        ends.put(stream, hash);
        records.add(record);
        leaves.add(new Leaf(stream, place, Hash.ofHex(hash)));
        return this;
    }

    Checkpoint head(int size) {
        Frontier frontier = Frontier.empty();
        leaves.subList(0, size).forEach(leaf -> frontier.add(leaf.leafHash()));
        return new Checkpoint(LOG.verifier().name(), size, frontier.root());
    }

    /** The note of the head, with the witness's signature if that is wanted. */
    private SignedNote note(boolean witnessed) {
        String text = head(leaves.size()).text();
        SignedNote note = new SignedNote(text, List.of(LOG.sign(text)));
        return witnessed ? note.with(List.of(WITNESS.cosign(text, 1_767_225_600))) : note;
    }

    /** The file of one ticket's trail; what is recorded of it after so many entries is not sealed yet. */
    String trail(String ticket, int sealed) {
        SignedNote note = note(true);
        ByteArrayOutputStream hashes = new ByteArrayOutputStream();
        leaves.forEach(leaf -> hashes.writeBytes(leaf.leafHash().bytes()));
        TreeReader tree = new TreeReader(leaves.size(), tile -> hashes.toByteArray());
        StringBuilder file = new StringBuilder(TrailLines.first(ticket, note, new TreeMap<>()) + "\n");
        for (int i = 0; i < leaves.size(); i++) {
            Leaf leaf = leaves.get(i);
            if (leaf.stream().equals("ticket/" + ticket)) {
                boolean proven = leaf.place() <= sealed;
                file.append(TrailLines.entry(
                                records.get(i),
                                null,
                                leaf.hash().hex(),
                                proven ? new ProofFile(i, tree.inclusion(i), note) : null))
                        .append('\n');
            }
        }
        return file.toString();
    }

    /** Writes it as the server does; with the witness's signature if that is wanted. */
    void write(Path folder, boolean witnessed) throws IOException {
        put(folder, "checkpoint", note(witnessed).bytes());
        String end = leaves.size() == 256 ? "000" : "000.p/" + leaves.size();
        put(folder, "tile/entries/" + end, EntryBundle.write(leaves));
        ByteArrayOutputStream hashes = new ByteArrayOutputStream();
        leaves.forEach(leaf -> hashes.writeBytes(leaf.leafHash().bytes()));
        put(folder, "tile/0/" + end, hashes.toByteArray());
        put(folder, "records/" + end, (String.join("\n", records) + "\n").getBytes(StandardCharsets.UTF_8));
    }

    private static void put(Path folder, String name, byte[] content) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.write(file, content);
    }
}
