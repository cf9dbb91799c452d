package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The key of a log gives way to the next one, as the settings are changed step by step, and back again. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class KeyRotationTest {
    @Inject
    LogRows rows;

    @Inject
    Sealing sealing;

    @Inject
    SealConfig config;

    @Inject
    SealJob job;

    @Inject
    ObjectMapper mapper;

    @Inject
    Clock clock;

    @Inject
    PeopleActs people;

    @TempDir
    Path folder;

    /** The settings with other key files. */
    private SealConfig named(Path key, Path next) {
        return (SealConfig) Proxy.newProxyInstance(
                SealConfig.class.getClassLoader(),
                new Class<?>[] {SealConfig.class},
                (self, method, arguments) -> switch (method.getName()) {
                    case "keyFile" -> Optional.of(key);
                    case "nextKeyFile" -> Optional.ofNullable(next);
                    default -> method.invoke(config, arguments);
                });
    }

    /** One round with those settings: something is recorded, sealed and signed. */
    private SignedNote signed(SealConfig settings) {
        people.ensureAccount("rotate-" + System.nanoTime(), "Somebody", Set.of(Role.TRAINEE), "a long enough password");
        Signing signing = new Signing(rows, keys(settings), settings, clock);
        signing.requireNotBehind();
        signing.recordKeys();
        sealing.sealAll();
        return signing.sign().orElseThrow();
    }

    private LogKeys keys(SealConfig settings) {
        return new LogKeys(rows, settings, mapper);
    }

    private Set<String> good(SealConfig settings) {
        return QuarkusTransaction.requiringNew()
                .call(() -> keys(settings).known().good());
    }

    private static void assertSignedBy(SignedNote note, String... keys) {
        List<VerifierKey> wanted =
                List.of(keys).stream().map(VerifierKey::parse).toList();
        assertEquals(Set.copyOf(wanted), new HashSet<>(note.signers(wanted)), note::toString);
        assertEquals(keys.length, note.lines().size());
    }

    private boolean counts(String key, SignedNote note) {
        long size = Checkpoint.parse(note.text()).size();
        return QuarkusTransaction.requiringNew()
                .call(() -> keys(config).known().signing(size).contains(VerifierKey.parse(key)));
    }

    @Test
    void aKey_givesWayToTheNext_andBothCountInTheirTimeOnly() {
        job.round();
        Path first = config.keyFile().orElseThrow();
        Path second = folder.resolve("next.key");
        String old = good(config).iterator().next();
        SealConfig alone = named(first, null);
        SignedNote before = signed(alone);
        assertSignedBy(before, old);

        SignedNote both = signed(named(first, second));
        assertTrue(Files.exists(second), "the next key is made where it is named");
        Set<String> two = new HashSet<>(good(alone));
        two.remove(old);
        String next = two.iterator().next();
        assertSignedBy(both, old, next);

        // the note that nothing is signed without stands beside the next key already
        SignedNote after = signed(named(second, null));
        assertSignedBy(after, next);
        assertEquals(Set.of(next), good(alone));
        assertTrue(counts(old, before) && counts(old, both), "what the old key signed stays signed");
        assertTrue(!counts(old, after) && counts(next, after), "it signs nothing any more");

        SealStopped stopped = assertThrows(SealStopped.class, () -> signed(alone));
        assertTrue(stopped.sentence().contains("does not know the key"), stopped.sentence());
        SealStopped strange = assertThrows(SealStopped.class, () -> signed(named(folder.resolve("no.key"), null)));
        assertTrue(strange.sentence().contains("cannot be read"), strange.sentence());

        assertSignedBy(signed(named(second, first)), next, old);
        assertSignedBy(signed(alone), old);
        job.round();
        assertEquals("", job.stopped());
        assertEquals(List.of(), SealRounds.look("keys ", "checkpoint", "head of "));
    }
}
