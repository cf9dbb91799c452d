package org.benchtrail.seal;

import io.quarkus.arc.Arc;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusMock;
import java.time.Clock;
import java.util.List;
import org.benchtrail.core.integrity.WitnessPolicy.Party;

/** A site whose policy names witnesses, until the test ends. */
public final class WitnessedSite {
    private WitnessedSite() {}

    /** The key of the log, as a witness is told it. */
    public static String key() {
        LogKeys keys = Arc.container().instance(LogKeys.class).get();
        return QuarkusTransaction.requiringNew()
                .call(() -> keys.known().good().iterator().next());
    }

    /** From now on these are asked, and no others. */
    public static void asks(Party... witnesses) {
        QuarkusMock.installMockForType(new Asking(List.of(witnesses)), Witnessing.class);
    }

    private static final class Asking extends Witnessing {
        private final List<Party> asked;

        Asking(List<Party> asked) {
            super(
                    one(LogRows.class),
                    one(WitnessRows.class),
                    one(LogKeys.class),
                    one(Signing.class),
                    one(WitnessedHeads.class),
                    one(SealConfig.class),
                    one(Clock.class));
            this.asked = asked;
        }

        private static <T> T one(Class<T> type) {
            return Arc.container().instance(type).get();
        }

        @Override
        List<Party> witnesses() {
            return asked;
        }
    }
}
