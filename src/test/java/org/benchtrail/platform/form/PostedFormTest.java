package org.benchtrail.platform.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.persistence.OptimisticLockException;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.platform.Stale;
import org.benchtrail.platform.problem.ProblemKind;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From fields and JSON to records, and back to the fields. */
class PostedFormTest {
    enum Colour {
        RED,
        BLUE
    }

    record Lamp(
            String name,
            @Nullable String note,
            int watts,
            boolean lit,
            @Nullable Colour colour,
            List<String> rooms,
            Map<Colour, Boolean> seen) {
        Lamp {
            if (name.isEmpty()) {
                throw new Invalid("name", "Name the lamp.");
            }
        }
    }

    private static PostedForm form(Map<String, List<String>> typed) {
        return new PostedForm(typed);
    }

    private static List<Problem> refused(PostedForm form) {
        return assertThrows(Invalid.class, form::done).problems();
    }

    @Test
    void group_isReadIntoItsRecord() {
        PostedForm form = form(Map.of(
                "lamp.name", List.of(" hall\r\nlamp "),
                "lamp.watts", List.of("7"),
                "lamp.lit", List.of("true"),
                "lamp.colour", List.of("BLUE"),
                "lamp.rooms", List.of("hall", " ", "yard"),
                "lamp.seen.RED", List.of("true"),
                "other.name", List.of("x")));
        assertEquals(
                Optional.of(new Lamp(
                        "hall\r\nlamp", null, 7, true, Colour.BLUE, List.of("hall", "yard"), Map.of(Colour.RED, true))),
                form.optional("lamp", Lamp.class)
                        .map(l -> new Lamp(
                                l.name(), l.note(), l.watts(), l.lit(), l.colour(), l.rooms(), Map.copyOf(l.seen()))));
        form.done();
        assertEquals("hall\nlamp", form.text("lamp.name"));
        assertEquals(" hall\r\nlamp ", form.asSent("lamp.name"));
        assertEquals(List.of("RED"), form.filled("lamp.seen."));
        assertTrue(form.given("lamp"));
        assertFalse(form.given("lam"));
    }

    @Test
    void whatABrowserLeavesOut_isEmpty_unlessItMayBeMissing() {
        PostedForm form = form(Map.of("lamp.colour", List.of("RED")));
        assertEquals(Optional.empty(), form.optional("lamp", Lamp.class));
        assertEquals(List.of(new Problem("lamp.name", "Name the lamp.")), refused(form));
        Lamp lamp =
                form(Map.of("name", List.of("desk"), "version", List.of("3"))).read(Lamp.class);
        assertEquals(List.of(), lamp.rooms());
        assertEquals(null, lamp.note());
    }

    @Test
    void untouchedGroup_isNoRecordAndNoProblem() {
        PostedForm form = form(Map.of("lamp.name", List.of("  "), "lamp.rooms", List.of()));
        assertEquals(Optional.empty(), form.optional("lamp", Lamp.class));
        form.done();
    }

    @Test
    void whatTheFormDoesNotAsk_isAdded() {
        PostedForm form = form(Map.of("lamp.watts", List.of("5")));
        assertEquals(
                "desk",
                form.optional("lamp", Lamp.class, Map.of("name", "desk"))
                        .orElseThrow()
                        .name());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "watts | many | Write a whole number here, not 'many'.",
                "colour | GREEN | 'GREEN' cannot be chosen here.",
                "seen.RED | perhaps | 'perhaps' cannot be chosen here."
            })
    void unreadableText_isToldAtItsField(String field, String text, String sentence) {
        PostedForm form = form(Map.of("lamp.name", List.of("desk"), "lamp." + field, List.of(text)));
        assertEquals(Optional.empty(), form.read("lamp", Lamp.class));
        form.refuse("own", "Think again.");
        assertEquals(
                List.of(new Problem("lamp." + field, sentence), new Problem("own", "Think again.")), refused(form));
    }

    @Test
    void numbersAndRows_areReadByName() {
        PostedForm form = form(Map.of(
                "version", List.of("12"),
                "big", List.of("1234567890"),
                "loads[10].watts", List.of("1"),
                "loads[2].watts", List.of("1"),
                "loads[3].watts", List.of(" "),
                "loads[4]", List.of("")));
        assertEquals(12, form.version());
        assertTrue(form.number("big").isEmpty());
        assertEquals(List.of(2, 4, 10), form.rows("loads"));
        assertEquals(0, form(Map.of()).version());
    }

    @Test
    void values_holdTheRecord_thenWhatWasTyped_thenWhatIsWrong() {
        FormValues values = new FormValues()
                .put("lamp", new Lamp("desk", null, 7, true, Colour.RED, List.of("a", "b"), Map.of(Colour.RED, true)))
                .put("", Map.of("rows", List.of(Map.of("watts", 4))))
                .set("free", "text");
        assertEquals("desk", values.value("lamp.name"));
        assertEquals("", values.value("lamp.note"));
        assertEquals("4", values.value("rows[0].watts"));
        assertTrue(values.is("lamp.rooms", "b") && values.is("lamp.seen.RED", "true") && values.is("free", "text"));
        assertFalse(values.wrong("lamp.name") || values.is("lamp.rooms", "c") || values.touched("lam"));
        PostedForm typed = form(Map.of("lamp.name", List.of("")));
        values.typed(typed, new Refusal(ProblemKind.INVALID, List.of(new Problem("lamp.name", "Name the lamp."))));
        assertEquals("", values.value("lamp.name"));
        assertEquals("Name the lamp.", values.error("lamp.name"));
        assertTrue(values.wrong("lamp.name") && values.touched("lamp") && !values.touched("other"));
    }

    @Test
    void refusal_hasTheStatusOfItsKind() {
        AtomicReference<@Nullable Refusal> told = new AtomicReference<>();
        Response done = Response.ok().build();
        assertEquals(done, Refusal.answer(() -> done, refusal -> fail(told, refusal)));
        for (RuntimeException thrown :
                List.of(new Invalid("name", "Name it."), new Stale(null), new OptimisticLockException())) {
            assertThrows(
                    Told.class,
                    () -> Refusal.answer(
                            () -> {
                                throw thrown;
                            },
                            refusal -> fail(told, refusal)));
            Refusal refusal = told.get();
            boolean invalid = thrown instanceof Invalid;
            assertEquals(invalid ? 422 : 409, refusal.kind().status());
            assertEquals(!invalid, refusal.isStale());
            assertEquals(invalid ? 1 : 0, refusal.problems().size());
        }
        assertEquals(409, Refusal.unmet(List.of()).kind().status());
    }

    private static final class Told extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    /** Stands for the page, which needs the whole server to be drawn. */
    private static io.quarkus.qute.TemplateInstance fail(AtomicReference<@Nullable Refusal> told, Refusal refusal) {
        told.set(refusal);
        throw new Told();
    }

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    private interface Kinded {}

    private static List<Problem> refusedJson(String text, String place) throws JsonProcessingException {
        ObjectMapper mapper = JsonMapper.builder().build();
        mapper.addMixIn(Lamp.class, Kinded.class);
        mapper.registerSubtypes(new com.fasterxml.jackson.databind.jsontype.NamedType(Lamp.class, "lamp"));
        PostedJson json = new PostedJson(mapper, "lamp");
        var tree = mapper.readTree(text);
        return assertThrows(Invalid.class, () -> json.read(tree, Lamp.class, place))
                .problems();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{'kind':'lamp','name':''} | name | Name the lamp.",
                "{'kind':'lamp','name':'a','watts':'many'} | watts | Give a whole number.",
                "{'kind':'lamp','name':'a','colour':'GREEN'} | colour | Choose one of: RED, BLUE.",
                "{'kind':'lamp','name':'a','rooms':[{}]} | rooms[0] | Give a text in quotes.",
                "{'kind':'lamp','name':'a','size':1} | size | A lamp of this kind has no such field; it has: colour, lit, name, note, rooms, seen, watts.",
                "{'kind':'tap'} | kind | There is no kind of lamp 'tap'; /q/openapi lists the kinds.",
                "{} | kind | Say which kind of lamp this is; /q/openapi lists the kinds."
            })
    void faultOfJson_namesItsField(String text, String field, String sentence) throws JsonProcessingException {
        String json = text.replace('\'', '"');
        assertEquals(List.of(new Problem(field, sentence)), refusedJson(json, ""));
        assertEquals(List.of(new Problem("[2]." + field, sentence)), refusedJson(json, "[2]"));
    }
}
