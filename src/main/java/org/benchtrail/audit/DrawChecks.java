package org.benchtrail.audit;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.audit.AuditAct;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.DrawCheck;
import org.benchtrail.seal.Heads;
import org.benchtrail.seal.SealedRecords;
import org.benchtrail.seal.SealedRecords.Standing;
import org.jspecify.annotations.Nullable;

/** What the log says of the acts that make a draw, for the one who checks it; everything within the running transaction. */
@ApplicationScoped
class DrawChecks {
    private final SealedRecords records;
    private final Heads heads;
    private final ObjectMapper mapper;

    DrawChecks(SealedRecords records, Heads heads, ObjectMapper mapper) {
        this.records = records;
        this.heads = heads;
        this.mapper = mapper;
    }

    /** What was altered of a lot that is drawn; none before. */
    List<DrawCheck.Fault> faults(AuditLot lot) {
        if (lot.seed().isEmpty()) {
            return List.of();
        }
        AuditAct.SeedDrawn seed = lot.seed().orElseThrow();
        return DrawCheck.of(
                lot,
                told(lot),
                new DrawCheck.Signed(
                        heads.isOfLog(seed.head()),
                        seed.witness().isEmpty() || heads.isOfWitness(seed.head(), seed.witness()),
                        heads.firstAfter("audit/" + lot.id(), lot.frozenPlace(), seed.witness())
                                .filter(first -> first.size() == seed.size()
                                        && first.note().equals(seed.head()))
                                .isPresent()));
    }

    private Map<Long, DrawCheck.Told> told(AuditLot lot) {
        List<Long> places = lot.acts().stream()
                .filter(e -> DrawCheck.isOfDraw(e.act()))
                .map(AuditAct.Entry::place)
                .toList();
        Map<Long, DrawCheck.Told> told = new HashMap<>();
        records.of("audit/" + lot.id(), places)
                .forEach((place, record) -> told.put(
                        place,
                        new DrawCheck.Told(
                                act(record.canonical()),
                                // whoever drew had a head that covers plan and list; what came after it may wait for
                                // its own
                                record.standing() == Standing.SEALED
                                        || (record.standing() == Standing.WAITING && place > lot.frozenPlace()))));
        return told;
    }

    private @Nullable AuditAct act(byte[] canonical) {
        try {
            JsonNode row = mapper.readTree(canonical).path("content");
            return ActJson.read(row.path("what").asText(), row.path("body").toString(), "");
        } catch (IOException | RuntimeException e) {
            return null; // an altered record may be anything
        }
    }
}
