package org.benchtrail.seal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.MessageDigest;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Somebody outside who follows the log over HTTP, written after the open formats with the JDK and a reader of JSON: no class of the program. Whatever
 * does not fit is an {@link AssertionError}.
 */
final class OutsideReader {
    private static final Pattern LEAF =
            Pattern.compile("leaf/1 ([a-z]{1,16}(?:/[0-9A-Za-z-]{1,40})?) ([1-9][0-9]*) ([0-9a-f]{64})\n");

    private final HttpClient http = HttpClient.newHttpClient();
    private final String prefix;
    private final String token;
    private final List<byte[]> hashes = new ArrayList<>();
    private final Map<String, Long> places = new HashMap<>();
    private final Map<String, String> sealed = new HashMap<>();
    private byte[] root = sha();
    private String key = "";

    /** @param prefix address of the log with a slash at its end */
    OutsideReader(String prefix, String token) {
        this.prefix = prefix;
        this.token = token;
    }

    static byte[] sha(byte[]... parts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            Arrays.stream(parts).forEach(digest::update);
            return digest.digest();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    int size() {
        return hashes.size();
    }

    /** Hash that the log holds for a place of a stream; empty if it holds none. */
    String sealed(String stream, long place) {
        return sealed.getOrDefault(stream + " " + place, "");
    }

    long places(String stream) {
        return places.getOrDefault(stream, 0L);
    }

    /** Fetches the checkpoint and what is new up to it, and checks all of it; answers with the size. */
    int follow(String verifierKey) {
        key = verifierKey;
        String note = new String(get("checkpoint"), StandardCharsets.UTF_8);
        String[] lines = note.split("\n", -1);
        String text = lines[0] + "\n" + lines[1] + "\n" + lines[2] + "\n";
        require(lines[3].isEmpty(), "an empty line after the root");
        require(Arrays.stream(lines).skip(4).anyMatch(line -> isSigned(line, text)), "signed by the log's key");
        int size = Integer.parseInt(lines[1]);
        require(size >= hashes.size(), "the log shrank from " + hashes.size() + " to " + size);
        int before = hashes.size();
        byte[] rootBefore = root;
        for (int tile = before / 256; tile * 256 < size; tile++) {
            read(tile, Math.min(256, size - tile * 256));
        }
        require(Arrays.equals(rootBefore, root(0, before)), "the root of before");
        root = root(0, size);
        require(Base64.getEncoder().encodeToString(root).equals(lines[2]), "the root at " + size);
        return size;
    }

    private boolean isSigned(String line, String text) {
        String[] parts = key.split("\\+", 3);
        String mark = "\u2014 " + parts[0] + " ";
        if (!line.startsWith(mark)) {
            return false;
        }
        byte[] signature = Base64.getDecoder().decode(line.substring(mark.length()));
        if (!HexFormat.of().formatHex(signature, 0, 4).equals(parts[1])) {
            return false;
        }
        try {
            byte[] raw = Base64.getDecoder().decode(parts[2]);
            byte[] encoded = HexFormat.of()
                    .parseHex("302a300506032b6570032100" + HexFormat.of().formatHex(raw, 1, raw.length));
            Signature check = Signature.getInstance("Ed25519");
            check.initVerify(KeyFactory.getInstance("Ed25519").generatePublic(new X509EncodedKeySpec(encoded)));
            check.update(text.getBytes(StandardCharsets.UTF_8));
            return check.verify(Arrays.copyOfRange(signature, 4, signature.length));
        } catch (GeneralSecurityException e) {
            return false;
        }
    }

    private void read(int tile, int width) {
        String name = String.format("%03d", tile) + (width == 256 ? "" : ".p/" + width);
        byte[] bundle = get("tile/entries/" + name);
        byte[] own = get("tile/0/" + name);
        require(own.length == width * 32, "the length of tile " + name);
        int at = 0;
        for (int i = 0; i < width; i++) {
            int length = ((bundle[at] & 0xff) << 8) + (bundle[at + 1] & 0xff);
            byte[] leaf = Arrays.copyOfRange(bundle, at + 2, at + 2 + length);
            at += 2 + length;
            byte[] hash = sha(new byte[] {0}, leaf);
            require(
                    Arrays.equals(hash, Arrays.copyOfRange(own, i * 32, i * 32 + 32)),
                    "hash " + i + " of tile " + name);
            int index = tile * 256 + i;
            if (index < hashes.size()) {
                require(Arrays.equals(hash, hashes.get(index)), "leaf " + index + " changed");
            } else {
                hashes.add(hash);
                take(new String(leaf, StandardCharsets.US_ASCII));
            }
        }
        require(at == bundle.length, "nothing after the leaves of tile " + name);
    }

    private void take(String leaf) {
        Matcher parts = LEAF.matcher(leaf);
        require(parts.matches(), "a leaf and nothing else: " + leaf);
        long place = Long.parseLong(parts.group(2));
        require(place == places(parts.group(1)) + 1, "the place after " + places(parts.group(1)) + ": " + leaf);
        places.put(parts.group(1), place);
        sealed.put(parts.group(1) + " " + place, parts.group(3));
    }

    /** Reads the file of a ticket's trail by itself: signature, entries, chain, and each proof by RFC 9162, 2.1.3.2; answers with how many. */
    static int trail(String file, String verifierKey) throws IOException {
        ObjectMapper json = new ObjectMapper();
        String[] lines = file.split("\n", -1);
        require(lines[lines.length - 1].isEmpty(), "a line that ends");
        JsonNode first = json.readTree(lines[0]);
        String[] note = first.get("head").asText().split("\n", -1);
        OutsideReader reader = new OutsideReader("", "");
        reader.key = verifierKey;
        String text = note[0] + "\n" + note[1] + "\n" + note[2] + "\n";
        require(Arrays.stream(note).skip(4).anyMatch(line -> reader.isSigned(line, text)), "signed by the log's key");
        String previous = "0".repeat(64);
        for (int i = 1; i < lines.length - 1; i++) {
            JsonNode line = json.readTree(lines[i]);
            byte[] entry = line.get("entry").asText().getBytes(StandardCharsets.UTF_8);
            String hash = HexFormat.of().formatHex(sha(new byte[] {0}, entry));
            JsonNode content = json.readTree(entry);
            require(hash.equals(line.get("hash").asText()), "the hash of entry " + i);
            require(content.get("previous").asText().equals(previous), "the entry before " + i);
            require(content.get("entry").asInt() == i, "the number of entry " + i);
            String leaf = "leaf/1 ticket/" + first.get("ticket").asText() + " " + i + " " + hash + "\n";
            List<byte[]> path = new ArrayList<>();
            line.get("proof").forEach(p -> path.add(Base64.getDecoder().decode(p.asText())));
            byte[] led = led(
                    line.get("leaf").asLong(),
                    Long.parseLong(note[1]),
                    sha(new byte[] {0}, leaf.getBytes(StandardCharsets.US_ASCII)),
                    path);
            require(Base64.getEncoder().encodeToString(led).equals(note[2]), "the proof of entry " + i);
            previous = hash;
        }
        return lines.length - 2;
    }

    private static byte[] led(long index, long size, byte[] leaf, List<byte[]> path) {
        require(index < size, "an index within the tree");
        long fn = index;
        long sn = size - 1;
        byte[] r = leaf;
        for (byte[] p : path) {
            require(sn != 0 && p.length == 32, "a path no longer than it has to be");
            if (fn % 2 == 1 || fn == sn) {
                r = sha(new byte[] {1}, p, r);
                while (fn % 2 == 0 && fn != 0) {
                    fn >>= 1;
                    sn >>= 1;
                }
            } else {
                r = sha(new byte[] {1}, r, p);
            }
            fn >>= 1;
            sn >>= 1;
        }
        require(sn == 0, "a path that leads to the root");
        return r;
    }

    private byte[] root(int from, int to) {
        if (from == to) {
            return sha();
        }
        if (to - from == 1) {
            return hashes.get(from);
        }
        int k = Integer.highestOneBit(to - from - 1);
        return sha(new byte[] {1}, root(from, from + k), root(from + k, to));
    }

    private byte[] get(String path) {
        HttpRequest request = HttpRequest.newBuilder(URI.create(prefix + path))
                .header("Authorization", "Bearer " + token)
                .build();
        try {
            HttpResponse<byte[]> answer = http.send(request, HttpResponse.BodyHandlers.ofByteArray());
            require(answer.statusCode() == 200, path + " answers " + answer.statusCode());
            return answer.body();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void require(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError(what);
        }
    }
}
