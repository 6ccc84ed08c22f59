/** The hierarchies: what an editor shows as trees and asks for one step at a time. Rows of the table in `requests.ts`. */
import {
  CallHierarchyIncomingCallsRequest,
  CallHierarchyOutgoingCallsRequest,
  CallHierarchyPrepareRequest,
  TypeHierarchyPrepareRequest,
  TypeHierarchySubtypesRequest,
  TypeHierarchySupertypesRequest,
} from "vscode-languageserver";
import { usesAhead } from "../features/ahead.ts";
import { incomingCalls, outgoingCalls, prepareCallHierarchy } from "../features/call-hierarchy.ts";
import { prepareTypeHierarchy, subtypes, supertypes } from "../features/type-hierarchy.ts";
import { ofHouse, ofText, type RequestRow } from "./request.ts";

export const hierarchyRequests: readonly RequestRow[] = [
  ofText(TypeHierarchyPrepareRequest.type, {
    does: "the drink or the family that the cursor names, with what a riff makes different",
    announces: { typeHierarchyProvider: true },
    empty: null,
    answer: ({ house, document, params, spelling }) => prepareTypeHierarchy(house, document, params.position, spelling),
  }),
  ofHouse(TypeHierarchySupertypesRequest.type, {
    does: "the drink that it is a riff of, and the family that it names itself",
    empty: null,
    answer: ({ house, params, spelling }) => supertypes(house, params.item, spelling),
  }),
  ofHouse(TypeHierarchySubtypesRequest.type, {
    does: "a drink's riffs; the drinks that name a family",
    ahead: usesAhead,
    empty: null,
    answer: ({ house, params, spelling }) => subtypes(house, params.item, spelling),
  }),
  ofText(CallHierarchyPrepareRequest.type, {
    does: "the stock, prep, drink or menu that the cursor names",
    announces: { callHierarchyProvider: true },
    empty: null,
    answer: ({ house, document, params, spelling }) => prepareCallHierarchy(house, document, params.position, spelling),
  }),
  ofHouse(CallHierarchyIncomingCallsRequest.type, {
    does: "the drinks and preps that pour it or garnish with it, the menus that list it, with the amounts and the places",
    ahead: usesAhead,
    empty: null,
    answer: ({ house, params, spelling }) => incomingCalls(house, params.item, spelling),
  }),
  ofHouse(CallHierarchyOutgoingCallsRequest.type, {
    does: "what it pours, garnishes with or lists, with the amounts and the places",
    empty: null,
    answer: ({ house, params, spelling }) => outgoingCalls(house, params.item, spelling),
  }),
];
