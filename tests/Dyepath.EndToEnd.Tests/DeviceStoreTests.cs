using System.Text.Json;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>The browser's own database, asked by itself: a copy for each tab, and what earlier versions kept.</summary>
public sealed class DeviceStoreTests(Browser browser, SharedHost shared)
{
    private const string Earlier = """
        making => new Promise(done => {
          const request = indexedDB.open('dyepath', 2);
          request.onupgradeneeded = () => {
            request.result.createObjectStore('projects', { keyPath: 'id' });
            request.result.createObjectStore('makings', { keyPath: 'id' });
            request.result.createObjectStore('taps');
          };
          request.onsuccess = () => {
            const writing = request.result.transaction(['projects', 'makings', 'taps'], 'readwrite');
            const at = '2026-01-01T00:00:00Z';
            writing.objectStore('projects').put({ id: '0193b5c2-0d60-7000-8000-0000000000a1', name: 'From before', text: '{ "title": "From before" }', dirty: true, revision: 3, archived: false, updatedAt: at });
            writing.objectStore('makings').put({ id: '0193b5c2-0d60-7000-8000-0000000000a2', title: 'Tideline', size: 'M', text: making, sent: 0, differs: false, revision: 0, begunAt: at, updatedAt: at });
            for (let n = 0; n < 2; n++) writing.objectStore('taps').put({ did: 'Step', at: `2026-01-01T00:00:0${n}Z` }, ['0193b5c2-0d60-7000-8000-0000000000a2', n]);
            writing.oncomplete = () => { request.result.close(); done(); };
          };
        })
        """;

    [Trait(Extent.Trait, Extent.Whole)]
    [Fact]
    public async Task WhatEarlierVersionsKeptIsThereAndGoesToTheHost()
    {
        await using var host = new PublishedHost();
        await host.StartAsync();
        await using var window = await browser.WindowAsync();
        var page = await window.NewPageAsync();
        await page.GotoAsync($"{host.Address}icon.svg");
        await page.EvaluateAsync(Earlier, Pieces.Tunic);
        await page.GotoAsync(host.Address.ToString());
        await page.GetByRole(AriaRole.Link, new() { Name = "From before", Exact = true }).WaitForAsync();
        await page.GetByText("2 entries").WaitForAsync();
        await page.OpenPieceAsync(host, "0193b5c2-0d60-7000-8000-0000000000a2");
        await page.TapAsync();
        await page.SavedAsync();
        Assert.Equal(3, (await host.LogAsync("0193b5c2-0d60-7000-8000-0000000000a2")).Count);
    }

    [Fact]
    [Trait(Extent.Trait, Extent.Whole)]
    public async Task ACopyTakesThePlaceOfThoseThatItFollowsAndOfNoOther()
    {
        var host = shared.Host;
        await using var window = await browser.WindowAsync();
        var page = await window.NewPageAsync();
        await page.GotoAsync($"{host.Address}icon.svg");
        var said = await page.EvaluateAsync<JsonElement>("""
            async () => {
              const store = await import('/js/store.js');
              const copy = (writer, lineage, text, more = {}) => JSON.stringify({ id: 'p', writer, stamp: 1, lineage, text, name: text, swatch: null, etag: null, made: null, isSent: false, includes: [], at: '', ...more });
              const write = async json => JSON.parse(await store.writeProject(json));
              const texts = async () => JSON.parse(await store.readProject('p')).map(c => c.text).sort();
              const steps = [];
              steps.push([(await write(copy('a', { a: 1 }, 'one', { etag: 'e1', isSent: true }))).others, await texts()]);
              const second = await write(copy('b', { a: 1, b: 1 }, 'two'));
              steps.push([second.others, second.includes, await texts()]);                              // goes on from it, and knows the host's
              steps.push([(await write(copy('c', { a: 1, c: 1 }, 'apart'))).others, await texts()]);      // both stay
              steps.push([(await write(copy('b', { a: 1, b: 2, c: 1 }, 'chosen'))).others, await texts()]);
              const same = await write(copy('d', { a: 1, b: 2, c: 1 }, 'chosen', { etag: 'e2', isSent: true }));
              const known = await write(copy('e', { a: 1, b: 2, c: 1 }, 'chosen'));
              steps.push([same.isSent, known.isSent, known.etag]);
              const entry = n => ({ did: 'Step', at: `2026-01-01T00:00:0${n}Z` });
              const piece = (writer, lineage, stamp, entries, design, log) => JSON.stringify({ header: { id: 'q', writer, stamp, lineage, includes: [], isSent: false, entries }, design, log });
              const put = async (json, had) => { const answer = await store.writePiece(json, had, []); return answer === 'anew' ? answer : JSON.parse(answer).ahead; };
              const log = async () => JSON.parse(await store.readPiece('q')).map(c => c.log.map(e => e.at.slice(-2)[0]).join(''));
              steps.push([await put(piece('a', { a: 1 }, 1, 1, '{}', [entry(1)]), -1), await put(piece('a', { a: 2 }, 2, 2, null, [entry(2)]), 1), await log()]);
              steps.push([await put(piece('a', { a: 3 }, 3, 3, null, [entry(3)]), 1), await log()]);     // not the copy that was read
              steps.push([await put(piece('b', { a: 1, b: 1 }, 1, 2, '{}', [entry(1), entry(9)]), -1), await log()]); // the other tab goes further
              steps.push([await put(piece('b', { a: 2, b: 1 }, 1, 3, '{}', [entry(1), entry(2), entry(4)]), -1), await log()]);
              await store.removePiece('q');
              steps.push([await log(), JSON.parse(await store.listPieces()).length]);
              return steps;
            }
            """);
        Assert.Equal(
            """[[false,["one"]],[false,["e1"],["two"]],[true,["apart","two"]],[false,["chosen"]],[true,true,"e2"],[false,false,["12"]],["anew",["12"]],[true,["12"]],[false,["124"]],[[],0]]""",
            said.GetRawText());
    }
}
