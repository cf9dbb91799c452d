package org.benchtrail.trail;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;

/** An entry to its canonical bytes and back. */
final class EntryCodec {
    /** Version of the envelope and of the payloads in it; every version ever written stays readable. */
    static final int FORMAT = 1;

    private static final ObjectMapper MAPPER = FactJson.mapper();

    /** Always six digits of fraction: the column keeps microseconds, and one instant has one form. */
    private static final DateTimeFormatter MICROSECONDS =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'").withZone(ZoneOffset.UTC);

    private EntryCodec() {}

    /** What is hashed: everything but the hash itself. */
    private record Envelope(
            int format,
            String ticket,
            int entry,
            String at,
            String actor,
            Set<Role> roles,
            Fact payload,
            String previous) {
        Envelope {
            Stream.of(ticket, at, actor, roles, payload, previous).forEach(Objects::requireNonNull);
        }
    }

    record Decoded(String ticket, Entry entry, String previous) {}

    static TrailEntry encode(String ticket, Entry entry, String previous) {
        Stamp stamp = entry.stamp();
        Envelope envelope = new Envelope(
                FORMAT,
                ticket,
                stamp.entry(),
                MICROSECONDS.format(stamp.at()),
                stamp.by(),
                new TreeSet<>(stamp.roles()),
                entry.fact(),
                previous);
        byte[] canonical = CanonicalJson.of(json(envelope));
        return new TrailEntry(
                stamp.entry(),
                stamp.at(),
                stamp.by(),
                FactKinds.name(entry.fact().getClass()),
                canonical,
                HashChain.hash(canonical));
    }

    /** @throws IllegalArgumentException if the bytes are no entry of a known format */
    static Decoded decode(byte[] canonical) {
        try {
            Envelope envelope = MAPPER.readValue(canonical, Envelope.class);
            if (envelope == null || envelope.format() != FORMAT) {
                throw new IllegalArgumentException("not of format " + FORMAT);
            }
            Stamp stamp = new Stamp(envelope.entry(), Instant.parse(envelope.at()), envelope.actor(), envelope.roles());
            return new Decoded(envelope.ticket(), new Entry(stamp, envelope.payload()), envelope.previous());
        } catch (IOException | DateTimeParseException e) {
            throw new IllegalArgumentException("not a readable entry: " + e.getMessage(), e);
        }
    }

    private static String json(Envelope envelope) {
        try {
            return MAPPER.writeValueAsString(envelope);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an entry is plain data", e);
        }
    }
}
